"""What can be wrong in a circuit, found the long way: every answer, every order of events, port by port.

This shares nothing with the program but the file it reads. Fluid is coloured by the pedal that pressed it;
after each event the colours spread by flooding from port to port, and what is open to air is washed out.
"""

from __future__ import annotations

from itertools import product

from firmpedal.model.kinds import Caliper, MasterCylinder, ParkingValve, Reservoir

LONGEST = 5  # events in a row: the worst thing known takes three


class Plumbing:
    """Ports by name: pipes that are always open, gates that are not, and where air comes in."""

    def __init__(self, aircraft):
        self.pipes = [(line.start, line.finish) for line in aircraft.lines]
        for line in aircraft.lines:
            self.pipes += [(line.start, f"{line.name}.from"), (line.finish, f"{line.name}.to")]
        for wall in aircraft.bulkheads:
            names = [f"{wall.name}.{side.name}" for side in wall.sides]
            self.pipes += [(names[0], name) for name in names]
        self.gates, self.pistons, self.pads, self.air = [], {}, {}, {}
        self.questions = []
        parts = aircraft.components
        said = any(isinstance(p, Reservoir) or getattr(p, "reservoir", "") == "built in" for p in parts)
        for part in parts:
            ports = {port.name: f"{part.name}.{port.name}" for port in part.ports}
            if isinstance(part, Caliper):
                self.pads[part.name] = list(ports.values())
                self.pipes += [(one, other) for one in ports.values() for other in ports.values()]
            elif isinstance(part, ParkingValve):
                self.gates += [(part.name, ports[one], ports[other]) for one, other in part.ways]
            elif isinstance(part, Reservoir):
                self.air |= dict.fromkeys(ports.values(), part.name)
                self.questions.append(("vented", part.name, part.vented.value))
            elif isinstance(part, MasterCylinder):
                self._cylinder(part, ports, said)
        self.questions = [self._settled(*question) for question in self.questions]

    def _settled(self, key, name, answer):
        """A cylinder right below open air seals when pressed: one that did not would press into the air."""
        if key != "seals":
            return key, name, answer
        open_air = {port for port, top in self.air.items() if ("vented", top, "yes") in self.questions}
        above = [port for part, port, _ in self.gates if part == name]
        sealing = above and all(self.flood(port, []) & open_air for port in above)
        return key, name, "yes" if sealing else answer

    def _cylinder(self, part, ports, said):
        outlet = ports["outlet"] if len(ports) > 1 else next(iter(ports.values()))
        self.pistons[part.name] = outlet
        inside = f"inside {part.name}"
        if part.reservoir == "built in" or ("inlet" not in ports and not said):
            self.air[inside] = part.name
            self.questions.append(("vented", part.name, "yes"))
            self.gates.append((part.name, inside, outlet))
            if "inlet" in ports:
                self.pipes.append((inside, ports["inlet"]))
        elif "inlet" in ports:
            self.gates.append((part.name, ports["inlet"], outlet))
        self.questions.append(("opens", part.name, part.opens_at_rest.value))
        self.questions.append(("seals", part.name, part.seals_when_pressed.value))

    def flood(self, start, open_gates):
        """Every port that fluid can get to from one."""
        wet, waiting = {start}, [start]
        while waiting:
            port = waiting.pop()
            for one, other in [*self.pipes, *open_gates]:
                for here, there in ((one, other), (other, one)):
                    if here == port and there not in wet:
                        wet.add(there)
                        waiting.append(there)
        return frozenset(wet)

    def whole(self, start, *, shut=""):
        return self.flood(start, [(one, other) for part, one, other in self.gates if part != shut])

    @property
    def ports(self):
        named = {port for pipe in self.pipes for port in pipe} | set(self.air) | set(self.pistons.values())
        named |= {port for _, *gate in self.gates for port in gate}
        return named | {port for ports in self.pads.values() for port in ports}


class Play:
    """One plumbing with every question answered."""

    def __init__(self, plumbing, answers):
        self.plumbing, self.answers = plumbing, answers
        self.known = {}

    def regions(self, pressed, shut):
        """For each port all that shares its pressure, given what is pressed and shut."""
        key = (pressed, shut)
        if key not in self.known:
            gates = [
                (one, other)
                for part, one, other in self.plumbing.gates
                if (
                    part not in pressed and self.answers["opens", part]
                    if part in self.plumbing.pistons
                    else part not in shut
                )
            ]
            found = {}
            for port in self.plumbing.ports:
                if port not in found:
                    region = self.plumbing.flood(port, gates)
                    found |= dict.fromkeys(region, region)
            self.known[key] = found
        return self.known[key]

    def airy(self, region):
        return any(
            self.answers["vented", self.plumbing.air[port]] for port in region if port in self.plumbing.air
        )

    def spread(self, colours, pressed, shut):
        regions = self.regions(pressed, shut)
        return {port: self.colour(region, colours, pressed, regions, ()) for port, region in regions.items()}

    def colour(self, region, colours, pressed, regions, seen):
        """Whose fluid stands in a region: of those who press in it or through from behind, or what stayed."""
        if region in seen or self.airy(region):
            return frozenset()
        found = frozenset(name for name in pressed if self.plumbing.pistons[name] in region)
        behind = [
            regions[above]
            for part, above, below in self.plumbing.gates
            if part in pressed and below in region and not self.answers["seals", part]
        ]
        for other in behind:
            found |= self.colour(other, colours, pressed, regions, (*seen, region))
        return found if behind else found.union(*(colours[port] for port in region))

    def after(self, event, part, moment):
        colours, pressed, shut = moment
        if event == "press":
            pressed = pressed | {part}
        elif event == "shut":
            shut = shut | {part}
        else:
            own = self.regions(pressed, shut)[self.plumbing.pistons[part]]
            colours = {p: c - {part} if p in own else c for p, c in colours.items()}
            pressed = pressed - {part}
        return self.spread(colours, pressed, shut), pressed, shut

    @property
    def start(self):
        return dict.fromkeys(self.plumbing.ports, frozenset()), frozenset(), frozenset()

    def moments(self, pedals, moment=None, length=LONGEST):
        """Every moment that some events in a row lead to, each way gone through on its own."""
        moment = moment or self.start
        yield moment
        if length:
            for name in pedals:
                event = "let go" if name in moment[1] else "press"
                yield from self.moments(pedals, self.after(event, name, moment), length - 1)


def wrong(plumbing, answers):
    """Everything that is wrong with these answers, as (kind, caliper, cylinder, by)."""
    play, found = Play(plumbing, answers), set()
    at_rest = play.regions(frozenset(), frozenset())
    done = set()
    for pads in plumbing.pads.values():
        circuit = plumbing.whole(pads[0])
        pedals = [name for name, outlet in plumbing.pistons.items() if outlet in circuit]
        wheels = {name: ports[0] for name, ports in plumbing.pads.items() if ports[0] in circuit}
        if circuit in done or not pedals:
            continue
        done.add(circuit)
        alone = {name: play.after("press", name, play.start) for name in pedals}
        for name, (_, pressed, shut) in alone.items():
            if play.airy(play.regions(pressed, shut)[plumbing.pistons[name]]):
                found.add(("makes no pressure", "", name, ""))
        found |= {
            ("not freed", wheel, "", "") for wheel, port in wheels.items() if not play.airy(at_rest[port])
        }
        serves = {
            (n, w) for n, (colours, *_) in alone.items() for w, port in wheels.items() if n in colours[port]
        }
        for colours, pressed, _ in play.moments(pedals):
            for (one, wheel), other in product(serves, pressed):
                if one == other or (other, wheel) not in serves:
                    continue
                stands = one in colours[wheels[wheel]]
                if stands and one not in pressed:
                    found.add(("held", wheel, one, other))
                if not stands and pressed == {one, other}:
                    found.add(("shut out", wheel, one, other))
        found |= set(not_parked(plumbing, play, serves, alone, circuit))
    return found


def not_parked(plumbing, play, serves, alone, circuit):
    ends = [port for port in (*plumbing.pistons.values(), *plumbing.air) if port in circuit]
    for valve in {part for part, one, _ in plumbing.gates if part not in plumbing.pistons and one in circuit}:
        for name, wheel in serves:
            port = plumbing.pads[wheel][0]
            if all(end in plumbing.whole(port, shut=valve) for end in ends):
                continue
            colours, *_ = play.after("let go", name, play.after("shut", valve, alone[name]))
            if name not in colours[port]:
                yield ("not parked", wheel, name, valve)


def search(aircraft):
    """Give for each thing that is or may be wrong `yes` or `unknown`, and which answers decide it."""
    plumbing = Plumbing(aircraft)
    asked = [(key, name) for key, name, answer in plumbing.questions if answer == "unknown"]
    given = {(key, name): answer == "yes" for key, name, answer in plumbing.questions}
    cases = {
        case: wrong(plumbing, given | dict(zip(asked, case, strict=True)))
        for case in product((False, True), repeat=len(asked))
    }
    verdicts = {}
    for fact in set().union(*cases.values()):
        decide = {
            question
            for n, question in enumerate(asked)
            for case, facts in cases.items()
            if (fact in facts) != (fact in cases[(*case[:n], not case[n], *case[n + 1 :])])
        }
        verdicts[fact] = ("unknown" if decide else "yes", frozenset(decide))
    return verdicts
