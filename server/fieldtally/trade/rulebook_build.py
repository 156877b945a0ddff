"""From a checked file to a Rulebook: sources are looked up, scoring is handed down to every level."""

from fieldtally.trade import quantities
from fieldtally.trade.entry_rules import EntryRule, Need
from fieldtally.trade.quantities import BY_PHASE, Quantity
from fieldtally.trade.rulebook import Level, Rulebook
from fieldtally.trade.rulebook_schema import MEMORY
from fieldtally.trade.stated import FROM_MEMORY, Ask, Movement, Note, Value


class Builder:
    """Builds one file. `source()` raises KeyError where a source is named that the file does not list."""

    def __init__(self, table: dict) -> None:
        self.table = table
        self.sources = {key: (each["title"], each["grade"]) for key, each in table["sources"].items()}
        self.sources[MEMORY] = ("from memory", FROM_MEMORY)

    def source(self, table: dict) -> dict:
        title, grade = self.sources[table["source"]]
        return {"source": title, "grade": grade}

    def value(self, quantity: Quantity, table: dict) -> Value:
        stated = " = ".join(table.get("stated", ()))
        return Value(
            quantity.name,
            table["value"],
            quantity.unit,
            **self.source(table),
            note=table.get("note", ""),
            stated=stated,
        )

    def values(self, known: dict[str, Quantity], table: dict) -> dict[str, Value]:
        return {name: self.value(known[name], each) for name, each in table.items()}

    def note(self, table: dict) -> Note:
        return Note(
            table["about"], table["text"], **self.source(table), value=table.get("value"), unit=table.get("unit", "")
        )

    def ask(self, table: dict) -> Ask:
        return Ask(table["ask"], table["text"], **self.source(table), presentation=dict(table["presentation"]))

    def movement(self, table: dict) -> Movement:
        return Movement(table["text"], **self.source(table), figure_m=table.get("figure_m"))

    def entry_rule(self, table: dict) -> EntryRule:
        options = table.get("options") or [table["needs"]]
        waiver = table.get("waived_by")
        return EntryRule(
            table["who"],
            table["text"],
            **self.source(table),
            options=tuple(tuple(Need(**need) for need in option) for option in options),
            waived_by=Need(**waiver) if waiver else None,
            in_force_from=table.get("in_force_from"),
            in_force_to=table.get("in_force_to"),
            category=table.get("category"),
        )

    def level(self, order: int, table: dict) -> Level:
        scoring, results = self.table["scoring"], self.table["qualifying_result"]
        return Level(
            table["id"],
            table["name"],
            order,
            phases={
                phase: self.values(known, scoring.get(phase, {}) | table[phase]) for phase, known in BY_PHASE.items()
            },
            asks=tuple(map(self.ask, table["asks"])),
            movements=tuple(map(self.movement, table["movements"])),
            entry=self.values(quantities.ENTRY, table["entry"]),
            eligibility=tuple(map(self.entry_rule, table["eligibility"])),
            qualifying_result=self.values(quantities.QUALIFYING_RESULT, results | table["qualifying_result"]),
            notes=tuple(map(self.note, table["notes"])),
        )

    def rulebook(self) -> Rulebook:
        table = self.table
        return Rulebook(
            *(table[name] for name in ("id", "title", "body", "edition", "status")),
            levels=tuple(self.level(order, each) for order, each in enumerate(table["levels"], 1)),
            scoring={phase: self.values(BY_PHASE[phase], each) for phase, each in table["scoring"].items()},
            validity=self.values(quantities.VALIDITY, table["validity"]),
            safety=self.values(quantities.SAFETY, table["safety"]),
            notes=tuple(map(self.note, table["notes"])),
        )
