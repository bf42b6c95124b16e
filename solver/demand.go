package solver

import "riserwork/solver/unit"

// Row is a row of a demand curve: fixture units, and the flow to be expected
// of them as the table prints it in US gpm and in L/s.
type Row struct{ Units, GPM, LS float64 }

// Curve is a demand curve, fewest units first.
type Curve []Row

// Rows are the two rows that units lie between; on a row that row is the
// lower one. False off the table.
func (c Curve) Rows(units float64) (below, above Row, ok bool) {
	for i := 1; i < len(c); i++ {
		if units >= c[i-1].Units && units < c[i].Units {
			return c[i-1], c[i], true
		}
	}
	return Row{}, Row{}, false
}

// Demand is the flow to be expected of fixture units, straight between the
// rows of the table; false off the table.
func (c Curve) Demand(units float64) (q unit.Flow, ok bool) {
	if last := c[len(c)-1]; units == last.Units {
		return unit.Flow(last.GPM) * unit.GPM, true
	}
	below, above, ok := c.Rows(units)
	if !ok {
		return 0, false
	}
	return Straight(units, below.Units, above.Units, unit.Flow(below.GPM)*unit.GPM, unit.Flow(above.GPM)*unit.GPM), true
}

// Straight is the flow at units, on a straight line between two rows.
//
//	Q = Q1 + (Q2 - Q1) (U - U1) / (U2 - U1)
func Straight(units, lowUnits, highUnits float64, low, high unit.Flow) unit.Flow {
	share := (units - lowUnits) / (highUnits - lowUnits)
	return low + unit.Flow(share)*(high-low)
}
