"""Options, `like`, `mirror of` and the mirror list: one thing of the file serving as another."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from firmpedal.finding import Problem
from firmpedal.project.names import closest, other_side, suggest
from firmpedal.project.position import AXES
from firmpedal.project.tree import Branch, Change, Items, Leaf, Node, Spans, at, overlay, placed, with_change

if TYPE_CHECKING:
    from firmpedal.finding import Span

LIKE = "like"
MIRROR_OF = "mirror of"
SECTIONS = ("moving", "zones", "components", "pedals", "bulkheads", "panels", "lines", "points")


def option_names(tree: Branch) -> tuple[str, ...]:
    options = at(tree, "options")
    return tuple(options.entries) if isinstance(options, Branch) else ()


def with_option(tree: Branch, option: str | None) -> tuple[Branch, list[Problem]]:
    """Lay one named option over the aircraft as written; an option's mirror list adds to it."""
    base = tree.without("options")
    problems = _option_problems(tree)
    if option is None or problems:
        return base, problems
    over = at(tree, "options", option)
    if not isinstance(over, Branch):
        names = option_names(tree)
        choices = suggest(option, names) or "this file has no options"
        return base, [Problem(tree.span, f"there is no option `{option}`", suggestion=choices)]
    merged = overlay(base, over.without("mirror"))
    mirror = over.entries.get("mirror")
    if isinstance(merged, Branch) and mirror is not None:
        merged = overlay(merged, _one_entry(merged, "mirror", _joined(base.entries.get("mirror"), mirror)))
    return (merged if isinstance(merged, Branch) else base), []


def _option_problems(tree: Branch) -> list[Problem]:
    options = at(tree, "options")
    if options is None:
        return []
    if not isinstance(options, Branch):
        return [Problem(options.span, "options should be things with names, each with its own keys")]
    return [
        Problem(node.span, f"option `{name}` should be keys and values, laid over the file's")
        for name, node in options.entries.items()
        if not isinstance(node, Branch)
    ]


def _one_entry(like: Branch, key: str, node: Node) -> Branch:
    return replace(like, entries={key: node}, keys={key: node.span})


def _joined(first: Node | None, second: Node) -> Node:
    if isinstance(first, Items) and isinstance(second, Items):
        return replace(second, nodes=(*first.nodes, *second.nodes))
    return overlay(first, second)


@dataclass
class _Deriver:
    tree: Branch
    problems: list[Problem] = field(default_factory=list)
    busy: set[tuple[str, str]] = field(default_factory=set)
    done: dict[tuple[str, str], Node | None] = field(default_factory=dict)
    pairs: dict[str, str] = field(default_factory=dict)

    def problem(self, span: Span, message: str, text: str = "", suggestion: str = "") -> None:
        self.problems.append(Problem(span, message, text, suggestion))

    def section(self, name: str) -> dict[str, Node]:
        node = self.tree.entries.get(name)
        return node.entries if isinstance(node, Branch) else {}

    def entry(self, section: str, name: str) -> Node | None:
        """One entry with its `like` or `mirror of` worked out; None where that cannot be done."""
        key = (section, name)
        if key in self.done:
            return self.done[key]
        node = self.section(section)[name]
        if key in self.busy:
            self.problem(node.span, f"`{name}` is like itself, round in a circle")
            return None
        self.busy.add(key)
        self.done[key] = self._derived(section, name, node)
        self.busy.discard(key)
        return self.done[key]

    def _derived(self, section: str, name: str, node: Node) -> Node | None:
        words = [word for word in (LIKE, MIRROR_OF) if at(node, word) is not None]
        if not isinstance(node, Branch) or not words:
            return node
        source = node.entries[words[0]]
        if len(words) > 1:
            self.problem(node.keys[words[1]], "a thing is `like` another or the `mirror of` one, not both")
        elif not isinstance(source, Leaf) or not source.text:
            self.problem(source.span, f"`{words[0]}` should name one thing in {section}")
        elif source.text not in self.section(section):
            near = suggest(source.text, self.section(section))
            self.problem(source.span, f"there is no `{source.text}` in {section}", source.text, near)
        else:
            path = f"{section}.{name}"
            change = self._mirror_change(node) if words[0] == MIRROR_OF else self._like_change(node, path)
            base = self.entry(section, source.text)
            return None if base is None or change is None else _changed(base, change, node)
        return None

    def _like_change(self, node: Branch, path: str) -> Change | None:
        swap, shift = node.entries.get("swap"), node.entries.get("shift")
        before = len(self.problems)
        if swap is not None and not _all_leaves(swap):
            self.problem(swap.span, "a swap is written as `swap: {left: right}`")
        if shift is not None and not _all_leaves(shift):
            self.problem(shift.span, "a shift is written as `shift: {right: 7}`")
        elif isinstance(shift, Branch):
            for key in shift.entries.keys() - AXES.keys():
                self.problem(shift.keys[key], f"`{key}` is not a way to go", key, suggest(key, AXES))
        if len(self.problems) > before:
            return None
        entries = swap.entries.items() if isinstance(swap, Branch) else ()
        pairs = tuple((key, leaf.text) for key, leaf in entries if isinstance(leaf, Leaf))
        named = placed(shift, f"{path}.shift", Spans()) if shift is not None else None
        return Change(shift=named, swap=pairs, by_words=True)

    def _mirror_change(self, node: Branch) -> Change | None:
        for key in ("swap", "shift"):
            if key in node.entries:
                self.problem(node.keys[key], f"`{key}` goes with `like`, not with `mirror of`", key)
                return None
        return Change(mirror=True, swap=tuple(self.pairs.items()))


def _changed(base: Node, change: Change, node: Branch) -> Node:
    own = node.without(LIKE, MIRROR_OF, "swap", "shift")
    changed = with_change(base, change)
    return overlay(changed, own) if own.entries else changed


def _all_leaves(node: Node) -> bool:
    """Say whether a piece is keys with words behind them, at least one."""
    leaves = node.entries.values() if isinstance(node, Branch) else ()
    return bool(leaves) and all(isinstance(leaf, Leaf) and leaf.text for leaf in leaves)


def derive(tree: Branch) -> tuple[Branch, list[Problem]]:
    """Work out every `like`, `mirror of` and mirror list of a file with its option applied."""
    work = _Deriver(tree)
    _find_pairs(work)
    tree = _add_mirrored(work)
    work.tree = tree
    for section in SECTIONS:
        node = tree.entries.get(section)
        if isinstance(node, Branch):
            found = {name: work.entry(section, name) for name in node.entries}
            entries = {name: entry for name, entry in found.items() if entry is not None}
            tree = replace(tree, entries={**tree.entries, section: replace(node, entries=entries)})
    return tree.without("mirror"), work.problems


def _find_pairs(work: _Deriver) -> None:
    """Collect which name mirrors to which, from the mirror list and from every `mirror of`."""
    node = work.tree.entries.get("mirror")
    wanted: list[tuple[str, str, Leaf]] = []
    if isinstance(node, Items):
        wanted = [(leaf.text, other_side(leaf.text), leaf) for leaf in node.nodes if isinstance(leaf, Leaf)]
    elif isinstance(node, Branch):
        wanted = [(key, leaf.text, leaf) for key, leaf in node.entries.items() if isinstance(leaf, Leaf)]
    if node is not None and (not wanted or len(wanted) < len(_members(node))):
        work.problem(node.span, "the mirror list is not names", suggestion=_HOW)
    for section in SECTIONS:
        for name, entry in work.section(section).items():
            source = at(entry, MIRROR_OF)
            if isinstance(source, Leaf):
                work.pairs.setdefault(source.text, name)
    for name, other, leaf in wanted:
        if name == other:
            work.problem(leaf.span, f"`{name}` has neither left nor right in it", name, _HOW)
        else:
            work.pairs[name] = other
    work.pairs.update({other: name for name, other in list(work.pairs.items())})


_HOW = "write `mirror: [left_line, left_pedal]`, or as keys `mirror: {this_name: its_mirror_image}`"


def _members(node: Node) -> list[Node]:
    if isinstance(node, Items):
        return list(node.nodes)
    return list(node.entries.values()) if isinstance(node, Branch) else []


def _add_mirrored(work: _Deriver) -> Branch:
    """Write a `mirror of` entry for each name on the mirror list; keys already there are exceptions."""
    tree = work.tree
    node = tree.entries.get("mirror")
    names = [leaf for leaf in _leaves(node) if leaf.text in work.pairs]
    for leaf in names:
        found = [section for section in SECTIONS if leaf.text in work.section(section)]
        for section in found:
            tree = _with_mirror_image(tree, section, leaf, work.pairs[leaf.text])
        if not found and not _was_removed(work, leaf.text):
            everything = [name for section in SECTIONS for name in work.section(section)]
            close = closest(leaf.text, everything)
            suggestion = f"did you mean `{close}`?" if close else ""
            work.problem(leaf.span, f"nothing is called `{leaf.text}`", leaf.text, suggestion)
    return tree


def _leaves(node: Node | None) -> list[Leaf]:
    if isinstance(node, Items):
        return [leaf for leaf in node.nodes if isinstance(leaf, Leaf)]
    if isinstance(node, Branch):
        return [Leaf(key, span) for key, span in node.keys.items()]
    return []


def _was_removed(work: _Deriver, name: str) -> bool:
    """Say whether an option took the thing out: its key is still remembered, its entry is gone."""
    sections = (work.tree.entries.get(section) for section in SECTIONS)
    return any(isinstance(section, Branch) and name in section.keys for section in sections)


def _with_mirror_image(tree: Branch, section: str, leaf: Leaf, other: str) -> Branch:
    node = tree.entries[section]
    if not isinstance(node, Branch):
        return tree
    image = Branch({MIRROR_OF: Leaf(leaf.text, leaf.span)}, {MIRROR_OF: leaf.span}, leaf.span)
    own = node.entries.get(other)
    if at(own, LIKE) is not None or at(own, MIRROR_OF) is not None:
        return tree  # written out as another's image: what is written wins
    merged = overlay(image, own) if own is not None else image
    entries = {**node.entries, other: merged}
    keys = {**node.keys, other: node.keys.get(other, leaf.span)}
    return replace(tree, entries={**tree.entries, section: replace(node, entries=entries, keys=keys)})
