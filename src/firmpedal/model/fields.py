"""How a field of the model is filled from the file: markers that hand the text to the reader.

The model does not know the file's format. Each marker names one method of the reading context
(project/context.py), which gets the text with its place and returns the finished value.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING, Annotated, Any, ClassVar, Self

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    ModelWrapValidatorHandler,
    ValidationInfo,
    model_validator,
)
from pydantic_core import core_schema

from firmpedal.model.space import Direction, Position
from firmpedal.quantity import Answer, Value
from firmpedal.units import Dimension

if TYPE_CHECKING:
    from pydantic import GetCoreSchemaHandler


@dataclass(frozen=True)
class Reads:
    """A marker: which method of the reading context makes this field's value.

    `optional` says that the builder may leave the key out; a number that is not `signed` cannot be less
    than nothing, one that is `positive` cannot be nothing either, and one that is `whole` is counted.
    """

    method: str
    dimension: Dimension | None = None
    choices: type[StrEnum] | None = None
    optional: bool = False
    target: str = ""
    signed: bool = True
    positive: bool = False
    whole: bool = False

    def __get_pydantic_core_schema__(
        self, _source: object, _handler: GetCoreSchemaHandler
    ) -> core_schema.CoreSchema:
        return core_schema.with_info_plain_validator_function(self._read)

    def _read(self, node: object, info: core_schema.ValidationInfo) -> object:
        return getattr(info.context, self.method)(node, self)


_SIGNED = (Dimension.ANGLE, Dimension.NUMBER, Dimension.TEMPERATURE)


def _measure(dimension: Dimension, *, optional: bool) -> Reads:
    return Reads("measure", dimension, optional=optional, signed=dimension in _SIGNED)


def _more_than_nothing(dimension: Dimension, *, optional: bool = True) -> Reads:
    return Reads("measure", dimension, optional=optional, signed=False, positive=True)


OptionalLength = Annotated[Value, _measure(Dimension.LENGTH, optional=True)]
Angle = Annotated[Value, _measure(Dimension.ANGLE, optional=False)]
OptionalAngle = Annotated[Value, _measure(Dimension.ANGLE, optional=True)]
LevelOrUp = Annotated[Value, Reads("measure", Dimension.ANGLE, optional=True, signed=False)]
OptionalForce = Annotated[Value, _measure(Dimension.FORCE, optional=True)]
OptionalPressure = Annotated[Value, _measure(Dimension.PRESSURE, optional=True)]
OptionalTemperature = Annotated[Value, _measure(Dimension.TEMPERATURE, optional=True)]
OptionalVolume = Annotated[Value, _measure(Dimension.VOLUME, optional=True)]
OptionalVolumePerLength = Annotated[Value, _measure(Dimension.VOLUME_PER_LENGTH, optional=True)]
OptionalTorque = Annotated[Value, _measure(Dimension.TORQUE, optional=True)]
OptionalSpeed = Annotated[Value, _measure(Dimension.SPEED, optional=True)]
OptionalAcceleration = Annotated[Value, _measure(Dimension.ACCELERATION, optional=True)]
OptionalTime = Annotated[Value, _measure(Dimension.TIME, optional=True)]
OptionalEnergy = Annotated[Value, _measure(Dimension.ENERGY, optional=True)]
OptionalMass = Annotated[Value, _measure(Dimension.MASS, optional=True)]
OptionalNumber = Annotated[Value, _measure(Dimension.NUMBER, optional=True)]

# What is there at all is more than nothing; where a key may be left out as well, `Some` says so.
Size = Annotated[Value, _more_than_nothing(Dimension.LENGTH, optional=False)]
SomeSize = Annotated[Value, _more_than_nothing(Dimension.LENGTH)]
SomeForce = Annotated[Value, _more_than_nothing(Dimension.FORCE)]
SomePressure = Annotated[Value, _more_than_nothing(Dimension.PRESSURE)]
SomeVolume = Annotated[Value, _more_than_nothing(Dimension.VOLUME)]
SomeTorque = Annotated[Value, _more_than_nothing(Dimension.TORQUE)]
SomeSpeed = Annotated[Value, _more_than_nothing(Dimension.SPEED)]
SomeAcceleration = Annotated[Value, _more_than_nothing(Dimension.ACCELERATION)]
SomeTime = Annotated[Value, _more_than_nothing(Dimension.TIME)]
SomeEnergy = Annotated[Value, _more_than_nothing(Dimension.ENERGY)]
SomeMass = Annotated[Value, _more_than_nothing(Dimension.MASS)]
SomeNumber = Annotated[Value, _more_than_nothing(Dimension.NUMBER)]

_COUNTED = Reads("measure", Dimension.NUMBER, signed=False, whole=True)
OptionalCount = Annotated[Value, replace(_COUNTED, optional=True)]
Several = Annotated[Value, replace(_COUNTED, positive=True)]  # one at least
SomeSeveral = Annotated[Value, replace(_COUNTED, positive=True, optional=True)]

Text = Annotated[str, Reads("text")]
Name = Annotated[str, Reads("text", target="names")]  # words, or a name that copies have to change
Designation = Annotated[str, Reads("text", target="parts")]  # of a part in the catalogue
YesNo = Annotated[Answer, Reads("answer", optional=True)]
Where = Annotated[Position, Reads("position")]
OptionalStep = Annotated[Position, Reads("vector", optional=True)]  # from one place to another
OptionalWhere = Annotated[Position, Reads("position", optional=True)]
Facing = Annotated[Direction, Reads("direction", optional=True)]


def _children(node: Any, info: ValidationInfo) -> Any:
    return node if info.context is None else info.context.children(node)


# A section of named things, or a list: the reading context hands over its members one by one.
Members = BeforeValidator(_children)


class Declared(BaseModel):
    """Something the builder declared; `place` is its object path in the file.

    `written` holds the fields that stand in the file, even if only as `unknown`; `free_keys` names
    the field that takes keys which are names of the builder's own.
    """

    __slots__ = ("_hash",)
    if TYPE_CHECKING:
        _hash: int
    free_keys: ClassVar[str] = ""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        arbitrary_types_allowed=True,
        populate_by_name=True,
        validate_default=False,
    )
    place: str
    written: frozenset[str] = frozenset()

    @model_validator(mode="wrap")
    @classmethod
    def _read(cls, node: Any, filled: ModelWrapValidatorHandler[Self], info: ValidationInfo) -> Self:
        """Let the reading context turn a piece of the file into this class's fields."""
        return filled(node) if info.context is None else info.context.thing(cls, node, filled)

    def __hash__(self) -> int:
        """Work the hash out once, as `hash_kept` does for dataclasses."""
        try:
            return self._hash
        except AttributeError:
            fields = type(self).__pydantic_fields__
            found = hash(tuple(map(self.__dict__.__getitem__, fields)))
            object.__setattr__(self, "_hash", found)
            return found


class Named(Declared):
    """Something with a name of its own, by which other parts of the file refer to it."""

    name: str
