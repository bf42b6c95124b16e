// Package formula reads, checks, evaluates and prints expressions over
// quantities. The lines of the catalogue and the lines that apprentices write
// go through the same reader:
//
//	reach = (street - residual) / gamma
//	62 - 0.433 x 96 = 20.4 psi
//
// An [Expr] is read once ([Parse], [ReadLine]). [Expr.Check] evaluates it with
// dimensions, so that a pressure added to a height is found when the catalogue
// is read. [Bound] evaluates it fast over plain numbers or over intervals, and
// it is printed as text, with numbers put in, or as MathML.
//
// It leaves out algebra: nothing is solved for or simplified.
package formula
