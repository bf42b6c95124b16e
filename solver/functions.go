package solver

import "riserwork/solver/formula"

// Functions are the named functions that rules may call where a line of the
// working is more than arithmetic: a table look-up, a demand curve, a next
// standard size. They take and give plain numbers in the units that their
// names say.
var Functions []formula.Func
