package solver

// VacuumRule says which heater tanks need a vacuum relief valve: codes name
// different triggers, and one that is met is enough.
type VacuumRule struct {
	AboveOutlets bool // tanks above the outlets that they serve
	BottomFed    bool // tanks whose cold water enters at the bottom
	AnyTank      bool // any tank that may be subject to back-siphonage
}

// Asks reports whether the rule asks for the valve on a storage tank below
// which its cold line may be opened.
func (r VacuumRule) Asks(above, bottomFed bool) bool {
	return r.AnyTank || r.AboveOutlets && above || r.BottomFed && bottomFed
}
