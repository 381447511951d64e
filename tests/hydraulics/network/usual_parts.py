"""Oil and machines that the whole circuits have in common: as text, and as figures of our own.

Oil at 40 degC has the viscosity that the text gives for 40 degC.
"""

import laws
from laws import MM2, Machine

NU = 46 * MM2
RHO = laws.density(870.0, 40.0)
MU = NU * RHO

OIL = '<fluid viscosity-40="46 mm2/s" viscosity-100="6.8 mm2/s" density="870 kg/m3"/>'

PUMP = 'slip-coefficient="1.5e-8" drag-coefficient="1.68e5" friction-coefficient="0.045"'
MOTOR = 'slip-coefficient="2e-8" drag-coefficient="1.2e5" friction-coefficient="0.03"'


def pump_of(size):
    """As PUMP."""
    return Machine(size, 1.5e-8, 1.68e5, 0.045)


def motor_of(size):
    """As MOTOR."""
    return Machine(size, 2e-8, 1.2e5, 0.03)
