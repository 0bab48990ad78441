"""``python -m trainwright`` is the console command."""

from .cli import main

if __name__ == "__main__":
    main()
