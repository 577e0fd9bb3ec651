"""Every command on every page prints what the page says it prints."""

import difflib
import shlex
import shutil

import pytest
from generator.console import only, printed
from page_blocks import PAGES, ROOT, blocks, joined, replaced


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_page_shows_what_is_printed(page, tmp_path, rewrite):
    text = page.read_text(encoding="utf-8")
    shutil.copytree(ROOT / "examples", tmp_path / "examples")
    changes = list(played(text, tmp_path))
    if rewrite:
        page.write_text(replaced(text, changes), encoding="utf-8", newline="\n")
        return
    stale = [(block, real) for block, real in changes if block.text != real]
    assert not stale, "\n".join(difference(page, *each) for each in stale)


def played(text, folder):
    """Go through a page; give every block that the program decides, with what it should hold."""
    files = {}
    for block in blocks(text):
        if block.kind == "yaml" and block.file:
            kept = files.get(block.file, "")
            if block.mode == "all":
                yield block, kept.strip()
            else:
                now = joined(kept, block.text)
                files[block.file] = kept if block.mode in ("try", "also") else now
                if block.mode != "also":
                    (folder / block.file).write_text(now, encoding="utf-8")
        elif block.kind == "csv" and block.file:
            (folder / block.file).write_text(f"{block.text}\n", encoding="utf-8")
        elif block.kind == "console":
            yield block, "\n".join(answered(command, block.only, folder) for command in commands(block))


def commands(block):
    found = [line[2:] for line in block.text.splitlines() if line.startswith("$ ")]
    assert found, f"line {block.line}: a console block without a command"
    return found


def answered(command, wanted, folder):
    """A command with its real output under it."""
    name, *words = shlex.split(command)
    assert name == "firmpedal", f"only firmpedal runs on a page, not `{command}`"
    output = printed(words, folder)
    missing = [each for each in wanted if each not in output]
    assert not missing, f"`{command}` prints nothing with {missing}:\n{output}"
    return f"$ {command}\n" + (only(output, wanted) if wanted else output)


def difference(page, block, real):
    head = f"{page.name}, line {block.line + 1}: run `pytest tests/docs --rewrite-docs` and read the diff"
    return "\n".join(
        [head, *difflib.unified_diff(block.text.splitlines(), real.splitlines(), "page", "real", lineterm="")]
    )
