"""Pieces of a list on a page: each stays as long as it is wanted, and none is left out."""

from __future__ import annotations

from firmpedal.web.sound.kept import Kept


class Element:
    """What a list needs of an element of a page."""

    def __init__(self, holder):
        self.holder = holder
        holder.children.append(self)

    def delete(self):
        self.holder.children.remove(self)

    def move(self, target_index):
        self.holder.children.remove(self)
        self.holder.children.insert(target_index, self)


class Holder:
    def __init__(self):
        self.children, self.default_slot = [], self

    def __enter__(self):
        return self

    def __exit__(self, *_):
        return None


class Piece:
    def __init__(self, holder):
        self.element = Element(holder)
        self.element.piece = self

    def show(self, told):
        self.told = told


def kept():
    holder = Holder()
    return holder, Kept(holder, lambda _told: Piece(holder))


def told(holder):
    return [each.piece.told for each in holder.children]


def test_pieces_stay_are_put_in_order_and_go():
    holder, pieces = kept()
    assert not pieces.show([("a", 1), ("b", 2), ("c", 3)])
    first = {each.piece.told: each for each in holder.children}
    assert pieces.show([("d", 4), ("c", 5), ("a", 6)])
    assert told(holder) == [4, 5, 6]
    assert holder.children[1:] == [first[3], first[1]]


def test_two_about_the_same_are_two():
    holder, pieces = kept()
    pieces.show([("a", 1), ("a", 2)])
    assert told(holder) == [1, 2]
    assert pieces.show([("a", 2)])
    assert told(holder) == [2]
