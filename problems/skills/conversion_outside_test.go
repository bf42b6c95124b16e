package skills_test

import "testing"

// Published factors of units, each through the skill that teaches it. Where a
// school's rounded factor is used the tolerance is its rounding.
func TestConversionsAgreeWithPublishedFactors(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_conversion.csv")
}
