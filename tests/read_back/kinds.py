"""The kinds of components: their words in the parts list, and which of them share a shape."""

KINDS = ("reservoir", "breather", "engine", "electric-motor", "brake", "clutch", "gearbox",
         "tachometer", "load", "pump", "motor", "pump-motor", "hand-pump", "semi-rotary-actuator",
         "cylinder", "check-valve", "shuttle-valve", "relief-valve", "reducing-valve",
         "sequence-valve", "counterbalance-valve", "unloading-valve", "priority-valve",
         "pilot-control-valve", "throttle", "throttle-check", "flow-control", "flow-divider",
         "filter", "strainer", "cooler", "heater", "thermostatic-bypass", "flushing-valve",
         "shut-off-valve", "bypass-valve", "orifice", "directional-valve", "accumulator", "gauge",
         "thermometer", "level-indicator", "flow-meter", "pressure-switch", "sensor",
         "measuring-point", "quick-coupling", "plug", "rotary-joint", "device")

# Words of the parts list that are not the kind's own with `-` for the blanks.
WORDS = {"combustion engine": "engine", "throttle with check": "throttle-check",
         "pump/motor unit": "pump-motor", "pressure gauge": "gauge"}
# Kinds that another kind's shape stands for; the parts list tells them apart.
SHAPES = {"bypass-valve": "shut-off-valve", "strainer": "filter", "pump-motor": "pump",
          **{kind: "pressure-valve" for kind in ("relief-valve", "sequence-valve",
                                                 "counterbalance-valve", "unloading-valve")},
          "pilot-control-valve": "directional-valve"}


def named(words):
    """The kind that words of the parts list name, if they name one."""
    return WORDS.get(words, words.replace(" ", "-"))


def shape(kind):
    return SHAPES.get(kind, kind)
