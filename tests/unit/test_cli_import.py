"""`import` by the command itself: what it writes, what it refuses, and that nothing else is touched."""

from __future__ import annotations

import pytest
from evaluated import EXAMPLE

from commands import firmpedal, prints
from texts import edited, small

UNUSABLE = 2
POINTS = "line,point,aft_in,right_in,up_in\n"
BENDS = "# rotation: plane\nline,bend,straight_before_in,rotation_deg,angle_deg,radius_in\n"


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "quill.yaml").write_text(small("quillfen"), encoding="utf-8")
    (tmp_path / "rigid.yaml").write_text(EXAMPLE.read_text(encoding="utf-8"), encoding="utf-8")
    return tmp_path


def run(folder, table, *words, into="quill.yaml"):
    (folder / "t.csv").write_text(table, encoding="utf-8")
    return firmpedal("import", "t.csv", "--into", into, *words, inside=folder)


def text_of(folder, name="quill.yaml"):
    return (folder / name).read_text(encoding="utf-8")


ONE_MORE = POINTS + "run,1,10,0,4\nrun,2,10,0,-3\nrun,3,12-1/2,0,-6\nrun,4,16,0,-6\n"


def test_points_are_written_at_their_place(folder):
    done = run(folder, ONE_MORE)
    assert (done.returncode, done.stderr) == (0, "")
    assert text_of(folder) == edited(
        small("quillfen"), ("      - [10, 0, -6]\n", "      - [10, 0, -3]\n      - [12.5, 0, -6]\n")
    )
    for words in ("run: 2 corners.", "-      - [10, 0, -6]", "+      - [12.5, 0, -6]", "Wrote quill.yaml"):
        assert words in done.stdout


def test_a_dry_run_shows_the_same_and_writes_nothing(folder):
    done = run(folder, ONE_MORE, "--dry-run")
    assert done.returncode == 0
    assert "+      - [12.5, 0, -6]" in done.stdout
    assert "Nothing was written: --dry-run." in done.stdout
    assert text_of(folder) == small("quillfen")


def test_fractions_where_the_file_shows_them(folder):
    path = folder / "quill.yaml"
    path.write_text(small("quillfen").replace("units: {", "units: {fractions: 16, "), encoding="utf-8")
    run(folder, ONE_MORE)
    assert "      - [12-1/2, 0, -6]\n" in text_of(folder)


# corner at (10, 0, -6): 10 in down, 6 in aft, R 3/4: straights 9.25 and 5.25
ELBOW = BENDS + "run,1,9.25,0,90,{radius}\nrun,end,{last},,,\n"


def test_bends_and_their_radius(folder):
    done = run(folder, ELBOW.format(radius=0.75, last=5.25))
    assert done.stdout == "run: as in the file already.\nNothing to change in quill.yaml.\n"
    # R 1 in: the straights are 1/4 in shorter for the same corner
    done = run(folder, ELBOW.replace("9.25", "9").format(radius=1, last=5))
    assert done.returncode == 0
    assert "run: bend radius 1.00 in is written too." in " ".join(done.stdout.split())
    assert text_of(folder) == edited(small("quillfen"), ("bend radius: 3/4", "bend radius: 1"))


def test_bends_are_turned_by_the_ports_where_the_file_has_no_corners(folder):
    path = folder / "quill.yaml"
    text = edited(small("quillfen"), ("    via:\n      - [10, 0, -6]\n", "    from fitting: straight\n"))
    path.write_text(text, encoding="utf-8")
    done = run(folder, ELBOW.format(radius=0.75, last=5.25))
    assert done.returncode == 0, done.stderr
    assert "as the fittings in the ports point" in " ".join(done.stdout.split())
    assert text_of(folder) == f"{text}    via:\n      - [10, 0, -6]\n"


def test_bends_whose_turn_nobody_knows_ask_for_a_point(folder):
    text = edited(
        small("quillfen"),
        ("    via:\n      - [10, 0, -6]\n", ""),
        ("faces: down, seat", "faces: unknown, seat"),
        ("faces: forward", "faces: unknown"),
    )
    (folder / "quill.yaml").write_text(text, encoding="utf-8")
    done = run(folder, ELBOW.format(radius=0.75, last=5.25))
    assert done.returncode == UNUSABLE
    said = " ".join(done.stderr.split())
    assert "how it is turned about the straight line between its ends is not known" in said
    assert "measure the first corner" in said
    assert text_of(folder) == text
    done = run(folder, ELBOW.format(radius=0.75, last=6.25))  # legs of 10 and 7 in place of 10 and 6
    assert done.returncode == UNUSABLE
    said = " ".join(done.stderr.split())
    assert f"the ends of the bent tube are {149**0.5 - 136**0.5:.3f} in too far apart" in said
    assert "how it is turned" not in said


REFUSED = [
    ("run,1,10,0,4.1\nrun,2,16,0,-6\n", (), "the first point [10.00, 0, 4.10] is 0.10 in from", "one datum"),
    ("run,1,16,0,-6\nrun,2,10,0,4\n", (), "the first point", "turn the rows round"),
    ("run,1,10,0,4\nrun,2,16,0,-6.1\n", (), "the last point", "one datum"),
    ("rum,1,10,0,4\nrum,2,16,0,-6\n", (), "the file has no line `rum`: did you mean `run`?", ""),
    (",1,10,0,4\n,2,16,0,-6\n", (), "no column `line`", ""),
    ("run,1,10,0,4\nrun,2,16,0,-6\n", ("--line", "rum"), "did you mean `run`?", ""),
    ("a,1,1,0,4\na,2,6,0,-6\nb,1,1,1,1\nb,2,2,2,2\n", ("--line", "run"), "the table has no line `run`", ""),
    ("run,1,10,0,x\nrun,2,16,0,-6\n", (), "t.csv:2:12: up: 'x'", "one figure"),
    ("run,1,10,0,4\nrun,2,16,0,-6\n", ("--rotation", "left"), "--rotation is plane or tube", ""),
]


@pytest.mark.parametrize(("table", "words", "message", "advice"), REFUSED)
def test_what_does_not_belong_is_refused_and_nothing_written(folder, table, words, message, advice):
    done = run(folder, POINTS + table, *words)
    assert done.returncode == UNUSABLE
    said = " ".join(done.stderr.split())
    assert message in said
    assert advice in said
    assert text_of(folder) == small("quillfen")


@pytest.mark.parametrize(
    ("table", "message"),
    [
        (ELBOW.format(radius=0.75, last=5.5), "too far apart for the seats in the file; 0.031 in is allowed"),
        (ELBOW.format(radius=0.75, last=5), "too near to each other"),
        (
            ELBOW.replace(",0,90", ",30,90").format(radius=0.75, last=5.25),
            "t.csv:3:12: bend 1 has a rotation of",
        ),
        (
            ELBOW.replace("{last},,,", "{last},,90,").format(radius=0.75, last=5.25),
            "t.csv:4:15: the row `end`",
        ),
        (
            BENDS + "run,1,9,0,45,1\nrun,2,1,0,45,2\nrun,end,5,,,\n",
            "its bends have radii from 1.00 in to 2.00 in, and a line has one bend radius",
        ),
    ],
)
def test_bends_that_do_not_fit_are_refused(folder, table, message):
    done = run(folder, table)
    assert done.returncode == UNUSABLE
    assert message in " ".join(done.stderr.split())
    assert text_of(folder) == small("quillfen")


def test_rotations_of_the_other_sign_are_refused(folder):
    """The mirror image has its ends as far apart, but leaves them another way."""
    prints("export", "rigid.yaml", "--option", "rigid", "--to", "csv", "-o", "out", inside=folder)
    (made,) = [path for path in (folder / "out").glob("*.csv") if "rotation_deg" in path.read_text("utf-8")]
    table = "\n".join(row for row in made.read_text("utf-8").splitlines() if not row.startswith("#"))
    words = ("--option", "rigid", "--line", "left_leg", "--rotation")
    done = run(folder, table, *words, "tube", into="rigid.yaml")
    assert done.returncode == UNUSABLE
    assert "degrees off the way that the file says" in " ".join(done.stderr.split())
    assert "as in the file already" in run(folder, table, *words, "plane", into="rigid.yaml").stdout


def test_into_an_options_own_line_and_not_into_its_mirror_image(folder):
    table = POINTS + "left_leg,1,7,-9,-0.9\nleft_leg,2,7,-9,-3\nleft_leg,3,6.6,-33.4,-30.2\n"
    done = run(folder, table, "--option", "rigid", into="rigid.yaml")
    assert done.returncode == 0, done.stderr
    via = "          - [7.0, -9.0, -3.2]\n          - [9.0, -11.6, -5.2]\n          - [5.6, -32.2, -28.6]\n"
    assert text_of(folder, "rigid.yaml") == edited(
        EXAMPLE.read_text(encoding="utf-8"), (via, "          - [7, -9, -3]\n")
    )
    right = POINTS + "right_leg,1,7,9,-0.9\nright_leg,2,7,9,-4\nright_leg,3,6.6,33.4,-30.2\n"
    done = run(folder, right, "--option", "rigid", into="rigid.yaml")
    assert done.returncode == UNUSABLE
    assert "it comes from line 175" in " ".join(done.stderr.split())
    # both sides together: the right one follows the left one
    both = table.replace("-3\n", "-3.1\n") + right.partition("\n")[2].replace("-4\n", "-3.1\n")
    done = run(folder, both, "--option", "rigid", into="rigid.yaml")
    assert done.returncode == 0, done.stderr
    assert "right_leg: as in the file already." in done.stdout


def test_hose_has_points_and_no_bends(folder):
    table = BENDS + "left_tail,1,1,0,90,1\nleft_tail,end,1,,,\n"
    done = run(folder, table, "--option", "rigid", into="rigid.yaml")
    assert done.returncode == UNUSABLE
    assert "left_tail is hose, which is not bent" in " ".join(done.stderr.split())


def test_corners_that_cannot_be_bent_are_written_and_told(folder):
    done = run(folder, POINTS + "run,1,10,0,4\nrun,2,10,0,3.9\nrun,3,16,0,3.9\nrun,4,16,0,-6\n")
    assert done.returncode == 0
    assert "run: so it cannot be bent" in done.stdout
