package devices

import "slices"

// Judgement is what an answer earns and what is said to it.
type Judgement struct {
	Right bool
	At    int    // of an order: the first place that is wrong; else -1
	Says  string // one or two sentences
}

// Choose judges the choice of an option.
func (q *Question) Choose(i int) Judgement {
	if i < 0 || i >= len(q.Options) {
		return Judgement{At: -1, Says: "Nothing was chosen yet."}
	}
	return Judgement{q.Options[i].Right, -1, q.Options[i].Why}
}

// Arrange judges an order of the items.
func (q *Question) Arrange(items []string) Judgement {
	for i, right := range q.Right {
		if i >= len(items) || items[i] != right {
			return Judgement{false, i, "In this place comes: " + right + ". " + q.Whys[i]}
		}
	}
	return Judgement{true, -1, "In order, from first to last."}
}

// Put judges the place of the missing device.
func (q *Question) Put(s Spot) Judgement {
	if slices.Contains(q.Places, s) {
		return Judgement{true, -1, sentence("it goes " + q.Device.Place)}
	}
	says := sentence("it goes " + q.Device.Place)
	if r := q.Drawing.run(s.Run); r != nil && s.At >= 0 && s.At <= len(r.Stand) {
		there := q.Drawing.Clone()
		there.insert(s.Run, s.At, Station{Device: q.Device.ID})
		for _, id := range q.Detail.Broken(there) {
			c := checkOf(q.Detail, id)
			return Judgement{false, -1, c.Says + " " + c.Why}
		}
	}
	return Judgement{false, -1, says}
}

// Mark judges the place that was marked as wrong; At of the spot is a station.
func (q *Question) Mark(s Spot) Judgement {
	if slices.Contains(q.Places, s) {
		return Judgement{true, -1, q.Fault.Did}
	}
	return Judgement{false, -1, "That one is as it should be."}
}
