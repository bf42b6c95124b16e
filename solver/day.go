package solver

import (
	"math"

	"riserwork/solver/unit"
)

// DayDraw is the share of a day's warm water that each hour takes, from
// midnight; the shares sum to 1.
type DayDraw [24]float64

// DayDraws are the days of the uses, in parts of 1,000. Common practice, no
// source: a morning and an evening peak where people live, lunch in offices,
// long days in hospitals.
var dayDraws = []struct {
	use   Use
	parts DayDraw
}{
	{Apartment, DayDraw{12, 8, 6, 6, 12, 40, 92, 104, 74, 52, 42, 38, 38, 36, 32, 32, 38, 52, 66, 68, 58, 46, 32, 16}},
	{Hotel, DayDraw{12, 8, 6, 8, 16, 54, 120, 128, 84, 52, 38, 30, 28, 26, 26, 30, 38, 50, 60, 58, 50, 40, 26, 12}},
	{Hospital, DayDraw{20, 16, 16, 16, 22, 40, 64, 74, 74, 68, 62, 56, 54, 52, 50, 46, 46, 46, 46, 40, 32, 26, 20, 14}},
	{Residence, DayDraw{24, 14, 8, 6, 8, 22, 74, 98, 82, 56, 44, 38, 36, 34, 34, 36, 42, 52, 62, 64, 58, 48, 36, 24}},
	{Office, DayDraw{2, 2, 2, 2, 4, 16, 52, 84, 98, 92, 86, 90, 108, 96, 82, 74, 56, 26, 10, 6, 4, 4, 2, 2}},
	{MixedUse, DayDraw{10, 7, 5, 5, 10, 36, 84, 98, 76, 58, 50, 46, 50, 44, 38, 36, 42, 54, 64, 64, 54, 40, 20, 9}},
}

// DayDrawOf is the day of a use; that of apartments where the use has none.
func DayDrawOf(use Use) DayDraw {
	parts := dayDraws[0].parts
	for _, d := range dayDraws {
		if d.use == use {
			parts = d.parts
		}
	}
	sum := 0.0
	for _, v := range parts {
		sum += v
	}
	for i := range parts {
		parts[i] /= sum
	}
	return parts
}

// Store is a hot water store as its day is followed: heat above cold water.
// Nothing mixes in it: what is drawn comes out hot until none is left.
type Store struct {
	Full   float64     // J, all of it that can be drawn hot
	Start  float64     // J, at midnight
	On     float64     // J; the heater starts when no more than this is left, and stops when it is full
	Input  unit.Power  // that the heater gives the water
	Losses unit.Power  // all day: the loop
	Draw   [24]float64 // W, of each hour
}

// StoreDay is a day of a store. Heat closes: In = Drawn + Lost + End - Start.
type StoreDay struct {
	Start   float64     // J, at midnight
	Left    [24]float64 // J, at the end of each hour
	Lowest  float64     // J
	At      float64     // hours after midnight, when it is lowest
	In      float64     // J, that the heater gave
	Drawn   float64     // J, that came out hot
	Lost    float64     // J, of the loop
	Short   float64     // J, that was asked for and not there
	Running float64     // hours that the heater ran
	Starts  int
}

// Day follows the store through a day exactly: within an hour nothing but the
// heater's switch changes, so the heat goes in straight lines from one event
// to the next. A store that would fill in under a second between start and
// stop is taken as none: its heater gives what is drawn, as far as it can.
func (s Store) Day() StoreDay {
	if s.Full-s.On < float64(s.Input) {
		s.Full, s.Start, s.On = 0, 0, 0
	}
	f := following{Store: s, left: math.Max(0, math.Min(s.Start, s.Full))}
	f.on = f.left <= s.On
	f.day.Start, f.day.Lowest = f.left, f.left
	for h := range s.Draw {
		if s.Full == 0 {
			f.straight(h, 3600)
		} else {
			f.hour(h)
		}
		f.day.Left[h] = f.left
	}
	return f.day
}

// following is a day under way.
type following struct {
	Store
	day  StoreDay
	left float64
	on   bool
}

func (f *following) hour(h int) {
	out := f.Draw[h] + float64(f.Losses)
	for rest := 3600.0; rest > 0; {
		if !f.on && f.left <= f.On {
			f.on = true
			f.day.Starts++
		}
		net := -out
		if f.on {
			net += float64(f.Input)
		}
		if f.on && f.left <= 0 && net < 0 {
			f.straight(h, rest)
			return
		}
		end, level := rest, math.NaN() // of this straight piece, and the mark it ends at
		reach := func(mark float64) {
			if t := (mark - f.left) / net; t < end {
				end, level = math.Max(0, t), mark
			}
		}
		switch {
		case f.on && net > 0:
			reach(f.Full)
		case f.on && net < 0:
			reach(0)
		case net < 0:
			reach(f.On)
		}
		f.pass(h, end, out, 0)
		f.left += net * end
		if level == level {
			f.left = level
			f.on = level != f.Full
			if level == f.On && level != 0 {
				f.day.Starts++
			}
		}
		rest -= end
		if f.left < f.day.Lowest {
			f.day.Lowest, f.day.At = f.left, float64(h)+(3600-rest)/3600
		}
	}
}

// straight is a time in which the heater gives what is drawn, as far as it
// can: the store is empty, or there is none.
func (f *following) straight(h int, seconds float64) {
	out := f.Draw[h] + float64(f.Losses)
	in := math.Min(float64(f.Input), out)
	f.on = true
	f.pass(h, seconds, out, out-in)
	if f.Input > 0 {
		f.day.Running += (in/float64(f.Input) - 1) * seconds / 3600
	}
	f.day.In += (in - float64(f.Input)) * seconds
}

// pass counts what a time brings: out is asked for, and short of it missing.
func (f *following) pass(h int, seconds, out, short float64) {
	if f.on {
		f.day.In += float64(f.Input) * seconds
		f.day.Running += seconds / 3600
	}
	drawn := math.Max(0, f.Draw[h]-short)
	f.day.Short += short * seconds
	f.day.Drawn += drawn * seconds
	f.day.Lost += (out - short - drawn) * seconds
}
