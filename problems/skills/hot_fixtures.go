package skills

import (
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/solver"
	"riserwork/solver/unit"
	"riserwork/solver/unit/measure"
)

var hotDemandSkill = problems.Skill{
	ID: "hot-demand", Title: "Hot water by the fixtures",
	Chapter: 6, Order: 50, Year: 3, Kind: problems.Table,
	Ask: "A building of the kind \"{kind}\" has {lavs} lavatories, {baths} baths, {showers} showers and {sinks} sinks. The table gives a lavatory {lav_use}, a bath {bath_use}, a shower {shower_use} and a sink {sink_use}; for this kind of building the demand factor is {demand_factor} and the storage factor {storage_factor}, that is so many hours of the probable demand. What storage does this ask for?",
	Givens: []problems.Given{
		{Name: "lavs", Says: "lavatories", Measure: &measure.Count},
		{Name: "baths", Says: "baths", Measure: &measure.Count},
		{Name: "showers", Says: "showers", Measure: &measure.Count},
		{Name: "sinks", Says: "sinks", Measure: &measure.Count},
		{Name: "lav_use", Says: "hot water of a lavatory in an hour", Measure: &measure.HourFlow},
		{Name: "bath_use", Says: "hot water of a bath in an hour", Measure: &measure.HourFlow},
		{Name: "shower_use", Says: "hot water of a shower in an hour", Measure: &measure.HourFlow},
		{Name: "sink_use", Says: "hot water of a sink in an hour", Measure: &measure.HourFlow},
		{Name: "demand_factor", Says: "demand factor", Measure: &measure.Share},
		{Name: "storage_factor", Says: "storage factor, in hours of the probable demand", Measure: &measure.TimeHours},
	},
	Rules: []problems.Rule{
		{
			Name: "possible", Says: "possible demand, all fixtures in use", Measure: &measure.HourFlow,
			Formula: "lavs x lav_use + baths x bath_use + showers x shower_use + sinks x sink_use",
			Why:     "Each kind of fixture counts as often as there is one.",
			Slips: []problems.Slip{
				{
					ID: "showers-left-out", Formula: "lavs x lav_use + baths x bath_use + sinks x sink_use",
					Did:  "You left the showers out.",
					Why:  "In the morning they draw the most hot water in the house.",
					Next: "Tick off each kind of fixture as it goes into the sum.",
				},
				{
					ID: "sinks-left-out", Formula: "lavs x lav_use + baths x bath_use + showers x shower_use",
					Did:  "You left the sinks out.",
					Why:  "Dishes need hot water too, and the table has a row for sinks.",
					Next: "Tick off each kind of fixture as it goes into the sum.",
				},
			},
		},
		{
			Name: "probable", Says: "probable demand, which the heater recovers", Measure: &measure.HourFlow,
			Formula: "possible x demand_factor",
			Why:     "Not every fixture runs in the same hour. The factor says which part does.",
			Slips: []problems.Slip{
				{
					ID: "demand-factor-left-out", Formula: "possible",
					Did:  "You took the possible demand as it stands.",
					Why:  "Then every tap in the house would be open for the same hour. The heater would be three or four times too large.",
					Next: "Possible, then probable: the factor stands between the two.",
				},
				{
					ID: "divided-by-factor", Formula: "possible / demand_factor",
					Did:  "You divided by the demand factor.",
					Why:  "What is probable is less than what is possible.",
					Next: "A factor under 1 that is multiplied makes the number smaller.",
				},
			},
		},
		{
			Name: "storage", Says: "storage", Measure: &measure.Tank,
			Formula: "probable x storage_factor",
			Why:     "The tank holds so many hours of the probable demand.",
			Slips: []problems.Slip{
				{
					ID: "storage-on-possible", Formula: "possible x storage_factor",
					Did:  "You put the storage factor on the possible demand.",
					Why:  "It belongs to the probable one. The tank would be several times too large, and slow water in it breeds germs.",
					Next: "Two factors in a row: first the demand, then from its result the storage.",
				},
				{
					ID: "divided-by-storage-factor", Formula: "probable / storage_factor",
					Did:  "You divided by the storage factor.",
					Why:  "More hours of storage must give a larger tank.",
					Next: "Hours times gallons (litres) an hour: the hours cancel.",
				},
			},
		},
	},
	Holds: "The fixture method counts all hot fixtures with a table of use by the hour, takes the part that is probable in one hour, and stores so many hours of it. The heater must recover the probable demand. Other methods count flats or people and come out lower for large buildings; never mix their figures.",
	Cautions: []string{
		legionella, scald, forcesStudy,
	},
	Sources: []problems.Source{
		{Says: "Factors 0.30 and 1.25 for apartments, 0.25 and 0.80 for hotels, 0.25 and 0.60 for hospitals, and the use of each fixture: ASHRAE table of hot water demand per fixture, seen in two copies", Confidence: solver.Confirmed},
	},
	Draw: drawHotFixtures,
	Solve: func(w problems.World) float64 {
		var sum unit.Flow
		for _, f := range []string{"lav", "bath", "shower", "sink"} {
			sum += unit.Flow(w.SI(f+"s")) * w.Flow(f+"_use")
		}
		return float64(sum) * w.SI("demand_factor") * w.SI("storage_factor")
	},
}

func init() { add(&hotDemandSkill) }

// hotUse is a kind of building with its use of hot water by the hour.
type hotUse struct {
	use                      solver.Use
	showerUS, sinkUS         float64
	showerSI, sinkSI         float64
	demand, storage          float64
	lavs, baths, shows, sink int // for each ten rooms or flats
}

// hotUses are from the same table as the factors; how many fixtures there are
// for ten rooms is common practice, no source.
var hotUses = []hotUse{
	{solver.Apartment, 30, 10, 114, 38, 0.3, 1.25, 14, 8, 5, 10},
	{solver.Hotel, 75, 30, 284, 114, 0.25, 0.8, 10, 6, 5, 2},
	{solver.Hospital, 75, 20, 284, 76, 0.25, 0.6, 16, 4, 5, 4},
}

func drawHotFixtures(s *building.Sheet) {
	u, _ := pick(s, hotUses)
	suppliedTower(s, building.Plan{Uses: []solver.Use{u.use}, Min: 4, Max: 14})
	tens := s.Int(2, 12)
	s.Name("kind", string(u.use))
	s.Set("lavs", float64(tens*u.lavs))
	s.Set("baths", float64(tens*u.baths))
	s.Set("showers", float64(tens*u.shows))
	s.Set("sinks", float64(tens*u.sink))
	s.Set("lav_use", s.Pick([]float64{2}, []float64{8}))
	s.Set("bath_use", s.Pick([]float64{20}, []float64{76}))
	s.Set("shower_use", s.Pick([]float64{u.showerUS}, []float64{u.showerSI}))
	s.Set("sink_use", s.Pick([]float64{u.sinkUS}, []float64{u.sinkSI}))
	s.Set("demand_factor", u.demand)
	s.Set("storage_factor", u.storage)
}
