"""The unit table against udunits (package udunits-bin), wherever udunits is right.

    units_test.py UNIT_TABLE

UNIT_TABLE prints our table. All questions go to one udunits2 process. Where udunits reads a
spelling of the trade as something else, or not at all, that is listed here with the reason, and the
list is checked: a spelling that udunits comes to agree with must leave it.
"""

import re
import subprocess
import sys
import unittest

UNIT_TABLE = None

# The SI unit of each dimension, as udunits writes it. A speed of rotation is kept in rad/s, an
# angle in rad; both are plain numbers to udunits.
SI = {
    "ratio": "1", "pressure": "Pa", "absolute pressure": "Pa", "displacement": "m3/rad", "flow": "m3/s",
    "volume": "m3", "length": "m", "speed of rotation": "rad/s", "velocity": "m/s", "torque": "N.m",
    "power": "W", "angle": "rad", "temperature": "K", "difference of temperatures": "K",
    "kinematic viscosity": "m2/s", "density": "kg/m3", "mass": "kg", "area": "m2", "force": "N",
    "moment of inertia": "kg.m2", "time": "s", "grade": "1", "specific heat": "J.kg-1.K-1",
    "dynamic viscosity": "Pa.s", "bulk modulus": "Pa", "stiffness": "N/m",
    "torsional stiffness": "N.m/rad", "thermal conductance": "W/K",
    "heat transfer coefficient": "W.m-2.K-1", "thermal conductivity": "W.m-1.K-1",
    "coefficient of thermal expansion": "1/K", "leakage coefficient": "m3.s-1.Pa-1", "energy": "J",
    "electric current": "A", "voltage": "V", "frequency": "Hz", "acceleration": "m/s2",
}

UNKNOWN, OTHER, DIFFERS = "not recognised", "another dimension", "another value"

# (dimension, spelling): what udunits makes of it, and why ours is right.
MISREAD = {
    ("displacement", "cm3/rev"): (UNKNOWN, "no 'rev'; the trade's unit of displacement"),
    ("displacement", "cc/rev"): (UNKNOWN, "no 'rev'; cc is the trade's cm3"),
    ("displacement", "mL/rev"): (UNKNOWN, "no 'rev'"),
    ("displacement", "L/rev"): (UNKNOWN, "no 'rev'"),
    ("displacement", "in3/rev"): (UNKNOWN, "no 'rev'"),
    ("displacement", "m3/rev"): (UNKNOWN, "no 'rev'"),
    ("displacement", "gal/rev"): (UNKNOWN, "no 'rev'; its 'gal' is the galileo"),
    ("pressure", "inH2O"): (UNKNOWN, "its column of water is inch.H2O"),
    ("pressure", "mmH2O"): (UNKNOWN, "its column of water is millimeter.H2O"),
    ("flow", "gpm"): (UNKNOWN, "gallons per minute, everywhere in the US trade"),
    ("flow", "gal/min"): (OTHER, "its 'gal' is the galileo, cm/s2"),
    ("flow", "gal/h"): (OTHER, "its 'gal' is the galileo, cm/s2"),
    ("volume", "gal"): (OTHER, "its 'gal' is the galileo, cm/s2"),
    ("volume", "qt"): (UNKNOWN, "its quart is 'liquid_quart'"),
    ("speed of rotation", "1/min"): (DIFFERS, "counts turns (ISO 80000-3), udunits radians"),
    ("speed of rotation", "rev/min"): (UNKNOWN, "no 'rev'"),
    ("speed of rotation", "rev/s"): (UNKNOWN, "no 'rev'"),
    ("speed of rotation", "deg/s"): (UNKNOWN, "its degree is 'degree' or the sign"),
    ("torque", "Nm"): (UNKNOWN, "N.m without the point, as the trade writes it"),
    ("velocity", "mph"): (OTHER, "metre phot; here miles per hour"),
    ("power", "PS"): (OTHER, "petasiemens; here the metric horsepower, 75 kgf.m/s"),
    ("angle", "deg"): (UNKNOWN, "its degree is 'degree' or the sign"),
    ("density", "lb/gal"): (OTHER, "its 'gal' is the galileo, cm/s2"),
    ("dynamic viscosity", "cP"): (UNKNOWN, "its poise has no symbol"),
    ("dynamic viscosity", "P"): (UNKNOWN, "its poise has no symbol"),
    ("torsional stiffness", "N.m/deg"): (UNKNOWN, "its degree is 'degree' or the sign"),
    ("torsional stiffness", "lbf.ft/deg"): (UNKNOWN, "its degree is 'degree' or the sign"),
    ("torsional stiffness", "lbf.in/deg"): (UNKNOWN, "its degree is 'degree' or the sign"),
    ("leakage coefficient", "gpm/psi"): (UNKNOWN, "gallons per minute, everywhere in the US trade"),
}

# The same in words of udunits, so that these are held against it as well.
IN_OTHER_WORDS = {
    ("displacement", "cm3/rev"): "cm3/revolution",
    ("displacement", "cc/rev"): "cm3/revolution",
    ("displacement", "mL/rev"): "mL/revolution",
    ("displacement", "L/rev"): "L/revolution",
    ("displacement", "in3/rev"): "inch3/revolution",
    ("displacement", "m3/rev"): "m3/revolution",
    ("displacement", "gal/rev"): "US_liquid_gallon/revolution",
    ("pressure", "inH2O"): "inch.H2O",
    ("pressure", "mmH2O"): "millimeter.H2O",
    ("flow", "gpm"): "US_liquid_gallon/minute",
    ("flow", "gal/min"): "US_liquid_gallon/minute",
    ("flow", "gal/h"): "US_liquid_gallon/hour",
    ("volume", "gal"): "US_liquid_gallon",
    ("volume", "qt"): "US_liquid_quart",
    ("speed of rotation", "1/min"): "revolution/minute",
    ("speed of rotation", "rev/min"): "revolution/minute",
    ("speed of rotation", "rev/s"): "revolution/second",
    ("speed of rotation", "deg/s"): "degree/second",
    ("torque", "Nm"): "newton.meter",
    ("velocity", "mph"): "international_mile/hour",
    ("power", "PS"): "75 kgf.m/s",
    ("angle", "deg"): "degree",
    ("density", "lb/gal"): "pound/US_liquid_gallon",
    ("dynamic viscosity", "cP"): "centipoise",
    ("dynamic viscosity", "P"): "poise",
    ("torsional stiffness", "N.m/deg"): "N.m/degree",
    ("torsional stiffness", "lbf.ft/deg"): "lbf.ft/degree",
    ("torsional stiffness", "lbf.in/deg"): "lbf.in/degree",
    ("leakage coefficient", "gpm/psi"): "(US_liquid_gallon/minute)/psi",
}

# No factor: a slope's angle, whose tangent is the grade; unit_definitions_test.cpp has it.
NO_FACTOR = {("grade", "deg")}

# udunits keeps these as NIST SP 811 prints them, to seven digits; ours follow from the definition.
ROUNDED = {
    ("power", "hp"), ("volume", "gal"), ("volume", "qt"), ("flow", "gpm"), ("flow", "gal/min"), ("flow", "gal/h"),
    ("displacement", "gal/rev"), ("density", "lb/gal"), ("leakage coefficient", "gpm/psi"),
    ("mass", "slug"), ("density", "slug/ft3"), ("moment of inertia", "slug.ft2"),
}

ABSOLUTE = re.compile(r" abs$")  # a word of the trade, not of the unit


def table():
    """(dimension, spelling, SI value of 0, SI value of 1) for every entry."""
    run = subprocess.run([UNIT_TABLE], capture_output=True, text=True, encoding="utf-8", check=True)
    for line in run.stdout.splitlines():
        dimension, spelling, zero, one = line.split("\t")
        yield dimension, spelling, float(zero), float(one)


def ask(questions):
    """What udunits2 says of each (have, want): a float, or UNKNOWN or OTHER.

    It shows six digits only, so the wanted unit is moved ("Pa @ 6894.757") to where the answer is
    nought. An empty line behind each pair keeps the dialogue in step: whatever becomes of a pair, it
    prompts for what one has twice.
    """
    lines = "".join(f"{have}\n{want}\n\n" for have, want in questions)
    run = subprocess.run(["udunits2", "-U"], input=lines, capture_output=True, text=True,
                         encoding="utf-8", check=False)
    parts = run.stdout.split("You have: ")[1:-1]
    if len(parts) != 2 * len(questions):
        raise AssertionError(f"udunits2 is out of step: {len(parts)} prompts, {len(questions)} questions")
    for first, second in zip(parts[::2], parts[1::2]):
        if second:
            yield UNKNOWN
            continue
        found = re.match(r"You want:\s+1 .*? = (\S+) ", first)
        yield float(found.group(1)) if found else OTHER


def agree(zero, one, difference, key=None):
    tolerance = 5e-7 if key in ROUNDED else 1e-12
    return abs(difference) <= tolerance * max(abs(one), abs(zero))


def question(have, dimension, shift):
    return f"({have})", f"{SI[dimension]} @ {shift!r}"


class Units(unittest.TestCase):
    maxDiff = None

    @classmethod
    def setUpClass(cls):
        cls.table = list(table())

    def test_there_is_a_table(self):
        self.assertGreater(len(self.table), 200)
        self.assertEqual({dimension for dimension, *_ in self.table}, set(SI))

    def judged(self):
        """(key, zero, one, what udunits says of the difference)."""
        questions, kept = [], []
        for dimension, spelling, zero, one in self.table:
            if not spelling or (dimension, spelling) in NO_FACTOR:  # no spelling: a bare number
                continue
            absolute = dimension == "pressure" and ABSOLUTE.search(spelling)
            if absolute:  # udunits knows no gauge pressure: put the atmosphere back
                one, zero = one - zero, 0.0
            have = ABSOLUTE.sub("", spelling)
            questions.append(question(have, dimension, one))
            kept.append(((dimension, spelling), zero, one))
        return [(*entry, answer) for entry, answer in zip(kept, ask(questions))]

    def test_udunits_agrees(self):
        held = 0
        for key, zero, one, answer in self.judged():
            if key in MISREAD:
                continue
            with self.subTest(key):
                self.assertIsInstance(answer, float)
                self.assertTrue(agree(zero, one, answer, key), answer)
                held += 1
        self.assertGreater(held, 170)

    def test_udunits_does_misread_what_is_listed(self):
        found = {key: (answer if isinstance(answer, str) else
                       "the same" if agree(zero, one, answer) else DIFFERS)
                 for key, zero, one, answer in self.judged() if key in MISREAD}
        self.assertEqual(found, {key: what for key, (what, _) in MISREAD.items()})

    def test_udunits_does_round_what_is_listed(self):
        exactly = {key for key, zero, one, answer in self.judged()
                   if key in ROUNDED - set(MISREAD) and agree(zero, one, answer)}
        self.assertEqual(exactly, set())
        gallon, = ask([question("US_liquid_gallon", "volume", 231 * 0.0254**3)])
        self.assertFalse(agree(0.0, 231 * 0.0254**3, gallon))

    def test_what_it_misreads_agrees_in_its_own_words(self):
        self.assertEqual(set(IN_OTHER_WORDS), set(MISREAD))
        ones = {(dimension, spelling): one for dimension, spelling, _, one in self.table}
        questions = [question(words, key[0], ones[key]) for key, words in IN_OTHER_WORDS.items()]
        for key, answer in zip(IN_OTHER_WORDS, ask(questions)):
            with self.subTest(key):
                self.assertIsInstance(answer, float)
                self.assertTrue(agree(0.0, ones[key], answer, key), answer)

    def test_a_temperature_has_its_offset(self):
        values = {spelling: zero for dimension, spelling, zero, _ in self.table
                  if dimension == "temperature"}
        self.assertEqual(len(values), 4)
        # "degC @ 0" is degC: its zero is asked for as one unit less than "degC @ -1" has.
        questions = [(f"{spelling} @ -1", f"K @ {zero!r}") for spelling, zero in values.items()]
        for spelling, answer in zip(values, ask(questions)):
            with self.subTest(spelling):
                self.assertIsInstance(answer, float)
                self.assertLess(abs(answer), 1e-9)

    def test_the_comparison_sees_a_wrong_factor(self):
        right, wrong = ask([question("psi", "pressure", 6894.757293168361),
                            question("psi", "pressure", 6894.757)])
        self.assertTrue(agree(0.0, 6894.757293168361, right))
        self.assertFalse(agree(0.0, 6894.757, wrong))

    def test_the_dialogue_stays_in_step(self):
        self.assertEqual(list(ask([("no_such_unit", "m"), ("(m)", "s"), ("(km)", "m @ 0")])),
                         [UNKNOWN, OTHER, 1000.0])


if __name__ == "__main__":
    UNIT_TABLE = sys.argv.pop(1)
    unittest.main()
