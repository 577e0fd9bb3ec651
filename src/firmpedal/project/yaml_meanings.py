"""What YAML's complaints mean to a builder, and what helps."""

from __future__ import annotations

BRACKETS = "look for a bracket that is never closed"

# Words of YAML's complaint, what it means to a builder, and what helps; the first that fits is taken.
MEANINGS = (
    (
        "mapping values are not allowed",
        "a second `:` stands here, or this line is not under the line it belongs to",
        "put the keys of one thing straight under each other; put quotes round a text with `: ` in it",
    ),
    (
        "but found another document",
        "a second document begins here; one file describes one aircraft",
        "take the line `---` or `...` out",
    ),
    (
        "undefined alias",
        "this alias (*) names nothing: no anchor (&) of that name stands before it",
        "write the value out, or put quotes round a text that begins with *",
    ),
    (
        "cannot start any token",
        "a text cannot begin with this character",
        "put quotes round the text",
    ),
    (
        "while scanning a quoted scalar",
        "a quote is opened here and never closed",
        "close it, or leave quotes away: `3/4 in` needs none",
    ),
    (
        "while scanning a double-quoted scalar",
        "a backslash in double quotes has a meaning of its own",
        "use single quotes: '...'",
    ),
    (
        "while parsing a flow sequence",
        "a list opened with `[` is not closed, or a comma is missing in it",
        "write it as [7.0, -9.0, 3-1/4]",
    ),
    (
        "while parsing a flow mapping",
        "keys opened with `{` are not closed, or a comma is missing between them",
        "write them as {value: 3, mark: assumed}",
    ),
    (
        "while parsing a flow node",
        "a value is missing before this comma or bracket",
        "write it, or `unknown`",
    ),
    ("but found '}'", "this bracket closes nothing", "take it out, or write the `{` that it belongs to"),
    ("but found ']'", "this bracket closes nothing", "take it out, or write the `[` that it belongs to"),
    ("found ']'", "this bracket closes nothing", "take it out, or write the `[` that it belongs to"),
    (
        "expected '<document start>'",
        "something above this line is no part of a builder's file",
        "begin a remark with #, and everything else with a key such as `aircraft:`",
    ),
    (
        "while parsing a block",
        "this line does not stand straight under the others it belongs to",
        "indent all keys of one thing by the same number of spaces; begin items of a list with `- `",
    ),
    (
        "could not find expected ':'",
        "this line should be a key with a `:` after it",
        "write `key: value`, or indent the line to go on with the text above",
    ),
    (
        "maximum depth",
        "lists or keys are nested too deeply here",
        BRACKETS,
    ),
    ("block entries are not allowed", "an item of a list cannot begin here", "begin it on a new line"),
    ("while scanning an alias", "`*` begins an alias, and no name follows", "put quotes round the text"),
    ("while scanning an anchor", "`&` begins an anchor, and no name follows", "put quotes round the text"),
    ("while parsing a node", "a `!` begins a tag, which means nothing here", "put quotes round the text"),
    ("while scanning a tag", "a `!` begins a tag, which means nothing here", "put quotes round the text"),
    (
        "while scanning a directive",
        "a line that begins with % is no part of a builder's file",
        "take it out, or begin the line with # to make it a comment",
    ),
    (
        "while scanning a block scalar",
        "after `|` or `>` a text begins on the next line",
        "put quotes round a text that begins with | or >",
    ),
    ("found duplicate", "this stands here a second time", "take one of them out"),
)

# With these YAML stumbles over a line that begins too far in, or not far enough.
OUT_OF_LINE = ("mapping values are not allowed", "while parsing a block")
