"""``python -m trainwright`` is the console command."""

from .cli import main

main()
