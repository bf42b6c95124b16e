package skills_test

import "testing"

// Published figures of pump power, speed laws and pressure tanks: each row of
// the table names its source and how it is known.
func TestPumpsAgreeWithPublishedFigures(t *testing.T) {
	comparePrinted(t, "../../testdata/worked_pumps.csv")
}
