"""What no text of the project may hold: paths of somebody's machine, and addresses of package registries."""

import re
import subprocess

import pytest
from page_blocks import ROOT

# Hosts that texts may name: names of formats, which nothing ever fetches.
FORMATS = {"www.w3.org"}
ADDRESS = re.compile(r"\b(?:https?|ssh|git)://(?P<host>[^/\s:'\"<>)]+)")
REGISTRY = re.compile(
    r"--(?:extra-)?index-url|--trusted-host|\bPIP_INDEX|\bpypi\.|\bpythonhosted\b", re.IGNORECASE
)
FOLDERS = "home|root|Users|tmp|work|mnt|opt"
MACHINE = re.compile(rf"(?<![\w.$~/-])/(?:{FOLDERS})/[\w.-]|\b[A-Z]:\\\w")


def tracked():
    """Every text of the project, as git lists them."""
    listed = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, text=True, check=True)  # noqa: S607
    for name in filter(None, listed.stdout.split("\0")):
        path = ROOT / name
        if path.is_file() and b"\0" not in (data := path.read_bytes()):
            yield name, data.decode("utf-8")


TEXTS = list(tracked())
OWN = "tests/docs/test_house_rules.py"


def found(pattern, text):
    return [line for line in text.splitlines() if pattern.search(line)]


def test_texts_are_found():
    assert {"README.md", "pyproject.toml", "src/firmpedal/pipeline.py"} <= {name for name, _ in TEXTS}


@pytest.mark.parametrize("pattern", [REGISTRY, MACHINE], ids=["registry", "machine"])
def test_no_machine_path_and_no_registry(pattern):
    bad = {name: lines for name, text in TEXTS if name != OWN and (lines := found(pattern, text))}
    assert bad == {}


def test_no_address_that_something_could_fetch():
    bad = {
        (name, address["host"]) for name, text in TEXTS if name != OWN for address in ADDRESS.finditer(text)
    }
    assert {each for each in bad if each[1] not in FORMATS} == set()


SLASH = "/"  # apart from the folder, so that this file breaks no rule itself


@pytest.mark.parametrize(
    ("pattern", "line"),
    [
        (MACHINE, f"see {SLASH}home/x"),
        (MACHINE, "C:\\x"),
        (MACHINE, f"({SLASH}tmp/y)"),
        (REGISTRY, "pip --index-url x"),
        (ADDRESS, "http://a.b/c"),
    ],
)
def test_patterns_catch(pattern, line):
    assert found(pattern, line)


@pytest.mark.parametrize("line", ["docs/work/x", "`a` in lb/ft", "$ROOT/tmp/x", "N/mm", "../work/x"])
def test_patterns_let_pass(line):
    assert not found(MACHINE, line)
