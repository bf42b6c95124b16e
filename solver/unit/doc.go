// Package unit holds the quantities of water supply: a number with its unit,
// the table of units that the trade meets, and reading and printing of both.
//
// Two forms of a quantity live here. Go code of the solver uses defined
// float64 types in SI base units (Length, Pressure, ...), so that a pressure
// cannot be passed for a height. Formulas, givens and whatever people type use
// [Quantity]: a number in a named [Unit] with its dimension.
//
// It leaves out what is more than a unit: constants of water are in solver.
package unit
