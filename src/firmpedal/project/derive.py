"""Options, `like`, `mirror of` and the mirror list: one thing of the file serving as another."""

from __future__ import annotations

import difflib
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from firmpedal.finding import Problem
from firmpedal.project.names import other_side
from firmpedal.project.tree import Branch, Change, Items, Leaf, Node, at, overlay, with_change

if TYPE_CHECKING:
    from firmpedal.finding import Span

SECTIONS = ("moving", "zones", "components", "pedals", "bulkheads", "panels", "lines", "points")


def option_names(tree: Branch) -> tuple[str, ...]:
    options = at(tree, "options")
    return tuple(options.entries) if isinstance(options, Branch) else ()


def with_option(tree: Branch, option: str | None) -> tuple[Branch, list[Problem]]:
    """Lay one named option over the aircraft as written; an option's mirror list adds to it."""
    base = tree.without("options")
    if option is None:
        return base, []
    over = at(tree, "options", option)
    if over is None:
        names = option_names(tree)
        close = difflib.get_close_matches(option, names, 1)
        choices = f"the options in this file are: {', '.join(names)}" if names else "this file has no options"
        suggestion = f"did you mean {close[0]}?" if close else choices
        return base, [Problem(tree.span, f"there is no option `{option}`", suggestion=suggestion)]
    if not isinstance(over, Branch):
        return base, [Problem(over.span, f"option `{option}` should be a list of keys")]
    merged = overlay(base, over.without("mirror"))
    mirror = over.entries.get("mirror")
    if isinstance(merged, Branch) and mirror is not None:
        merged = overlay(merged, _one_entry(merged, "mirror", _joined(base.entries.get("mirror"), mirror)))
    return (merged if isinstance(merged, Branch) else base), []


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
    done: dict[tuple[str, str], Node] = field(default_factory=dict)
    pairs: dict[str, str] = field(default_factory=dict)

    def problem(self, span: Span, message: str, text: str = "", suggestion: str = "") -> None:
        self.problems.append(Problem(span, message, text, suggestion))

    def section(self, name: str) -> dict[str, Node]:
        node = self.tree.entries.get(name)
        return node.entries if isinstance(node, Branch) else {}

    def entry(self, section: str, name: str) -> Node:
        """One entry with its `like` or `mirror of` worked out."""
        key = (section, name)
        if key in self.done:
            return self.done[key]
        node = self.section(section)[name]
        if key in self.busy:
            self.problem(node.span, f"`{name}` is like itself, round in a circle")
            return node.without("like", "mirror of") if isinstance(node, Branch) else node
        self.busy.add(key)
        self.done[key] = self._derived(section, node)
        self.busy.discard(key)
        return self.done[key]

    def _derived(self, section: str, node: Node) -> Node:
        if not isinstance(node, Branch):
            return node
        for word in ("like", "mirror of"):
            source = node.entries.get(word)
            if isinstance(source, Leaf):
                own = node.without("like", "mirror of", "swap", "shift")
                if source.text not in self.section(section):
                    self._dangling(section, source)
                    return own
                change = self._mirror_change() if word == "mirror of" else self._like_change(node)
                return overlay(with_change(self.entry(section, source.text), change), own)
        return node

    def _dangling(self, section: str, source: Leaf) -> None:
        names = list(self.section(section))
        close = difflib.get_close_matches(source.text, names, 1)
        suggestion = f"did you mean {close[0]}?" if close else f"choose one of: {', '.join(names)}"
        self.problem(source.span, f"there is no `{source.text}` in {section}", source.text, suggestion)

    def _like_change(self, node: Branch) -> Change:
        swap = node.entries.get("swap")
        entries = swap.entries.items() if isinstance(swap, Branch) else ()
        pairs = tuple((key, leaf.text) for key, leaf in entries if isinstance(leaf, Leaf))
        return Change(shift=node.entries.get("shift"), swap=pairs, by_words=True)

    def _mirror_change(self) -> Change:
        return Change(mirror=True, swap=tuple(self.pairs.items()))


def derive(tree: Branch) -> tuple[Branch, list[Problem]]:
    """Work out every `like`, `mirror of` and mirror list of a file with its option applied."""
    work = _Deriver(tree)
    _find_pairs(work)
    tree = _add_mirrored(work)
    work.tree = tree
    for section in SECTIONS:
        node = tree.entries.get(section)
        if isinstance(node, Branch):
            entries = {name: work.entry(section, name) for name in node.entries}
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
    for section in SECTIONS:
        for name, entry in work.section(section).items():
            source = at(entry, "mirror of")
            if isinstance(source, Leaf):
                work.pairs.setdefault(source.text, name)
    for name, other, leaf in wanted:
        if name == other:
            suggestion = "write the list as keys: `mirror: {this_name: name_of_its_mirror_image}`"
            work.problem(leaf.span, f"`{name}` has neither left nor right in it", name, suggestion)
        else:
            work.pairs[name] = other
    work.pairs.update({other: name for name, other in list(work.pairs.items())})


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
            close = difflib.get_close_matches(leaf.text, everything, 1)
            suggestion = f"did you mean {close[0]}?" if close else ""
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
    image = Branch({"mirror of": Leaf(leaf.text, leaf.span)}, {"mirror of": leaf.span}, leaf.span)
    own = node.entries.get(other)
    merged = overlay(image, own) if own is not None else image
    entries = {**node.entries, other: merged}
    keys = {**node.keys, other: node.keys.get(other, leaf.span)}
    return replace(tree, entries={**tree.entries, section: replace(node, entries=entries, keys=keys)})
