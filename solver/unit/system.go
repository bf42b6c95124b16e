package unit

// System is the set of units a problem is worked in.
type System string

// Systems of units. Mixed is the Canadian one: heights and code in SI, while
// gauges and plates read US units, which are converted first.
const (
	US     System = "us"
	Metric System = "metric"
	Mixed  System = "mixed"
)

// Systems in the order offered.
var Systems = []System{US, Metric, Mixed}
