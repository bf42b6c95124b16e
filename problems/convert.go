package problems

import (
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

// plateSuffix marks the name of a number as it stands on the plate or gauge,
// before it is converted.
const plateSuffix = "_gauge"

// conversions of what US gauges and plates read into the SI working of the
// mixed system. Formulas are over the plate's number.
var conversions = []struct {
	measure        *measure.Of
	says           string
	right, flipped string
}{
	{&measure.Pressure, "in kilopascals", "@ x kpa_per_psi", "@ / kpa_per_psi"},
	{&measure.Tank, "in litres", "@ x litre_per_gallon", "@ / litre_per_gallon"},
	{&measure.FlowRate, "in litres per second", "@ x ls_per_gpm", "@ / ls_per_gpm"},
	{&measure.Height, "in metres", "@ x metre_per_foot", "@ / metre_per_foot"},
	{&measure.PipeLength, "in metres", "@ x metre_per_foot", "@ / metre_per_foot"},
}

// conversion is the first line of a mixed problem for a given that is read in
// US units; nil where none is needed.
func conversion(g *Given, house House) *Rule {
	if !g.Plate || house.System != unit.Mixed {
		return nil
	}
	for _, c := range conversions {
		if c.measure.Name != g.Measure.Name {
			continue
		}
		name := g.Name + plateSuffix
		return &Rule{
			Name: g.Name, Says: g.Says + ", " + c.says,
			Formula: replaceAt(c.right, name), Measure: g.Measure,
			Why: "The gauge reads US units and the rest of the job is in SI. One system on the paper before any sum.",
			Slips: []Slip{{
				ID: g.Name + "-factor-upside-down", Formula: replaceAt(c.flipped, name),
				Did:  "You divided {" + name + "} by the factor.",
				Why:  "The SI unit here is the smaller one, so it takes more of them: the number must grow with pressure, volume and flow in small units, and the factor says by how much.",
				Next: "Ask first whether the new number should be larger or smaller; then the factor can only go one way.",
			}},
		}
	}
	return nil
}

// replaceAt puts name where the pattern has its @.
func replaceAt(pattern, name string) string {
	out := ""
	for _, r := range pattern {
		if r == '@' {
			out += name
		} else {
			out += string(r)
		}
	}
	return out
}
