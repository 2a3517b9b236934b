"""The kinds of array that all rooms pass on."""

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Integers = NDArray[np.intp]
Mask = NDArray[np.bool_]
