"""Units of the printed figures, from their definitions and not from the program's own table.

International yard and pound agreement of 1959; standard gravity, third CGPM, 1901.
"""

INCH = 0.0254
FOOT = 12 * INCH
POUND = 0.45359237
POUND_FORCE = POUND * 9.80665
PSI = POUND_FORCE / INCH**2
KSI = 1000 * PSI
MEGAPASCAL = 1e6
GIGAPASCAL = 1e9
MILLIMETRE = 1e-3
CUBIC_CENTIMETRE = 1e-6
CUBIC_INCH = INCH**3
PERCENT = 0.01
KNOT = 1852 / 3600  # international knot, first international extraordinary hydrographic conference, 1929
