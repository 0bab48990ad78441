"""The examples of README.md work as printed. The Rust one is a documentation test of the core."""

import re
import subprocess
from pathlib import Path

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def example(language: str) -> str:
    (block,) = re.findall(rf"```{language}\n(.*?)```", README, re.DOTALL)
    return str(block)


def test_python_example(capsys):
    exec(compile(example("python"), "README.md", "exec"), {})
    viscosities, chance = capsys.readouterr().out.strip().splitlines()
    assert viscosities.startswith("[64.19")
    assert 0.999 < float(chance) <= 1.0


def test_c_example_compiles_without_a_warning(tmp_path):
    source = tmp_path / "readme.c"
    source.write_text(
        '#include "trainwright.h"\n' + example("c") + "\nint main(void) { return first_ratio(0, 0, 0) == 0; }\n"
    )
    flags = ["-std=c99", "-Wall", "-Wextra", "-Wpedantic", "-Wconversion", "-Werror"]
    include = f"-I{ROOT / 'ffi' / 'include'}"
    subprocess.run(["cc", *flags, include, "-c", str(source), "-o", str(tmp_path / "readme.o")], check=True)
