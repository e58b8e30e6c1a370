//! Quantities with units as people write them, exact money, and the working behind a number
