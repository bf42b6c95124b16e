package devices

import (
	"slices"
	"strings"
)

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
		if ahead, behind, ok := q.neighbours(); ok {
			return Judgement{false, -1, "Along the flow it comes " + strings.TrimSpace(ahead+" "+behind) + "."}
		}
	}
	return Judgement{false, -1, says}
}

// neighbours are the devices that it comes behind and ahead of, of those whose
// order along the flow is beyond dispute.
func (q *Question) neighbours() (ahead, behind string, ok bool) {
	i := slices.Index(q.Detail.Flow, q.Device.ID)
	if i < 0 {
		return "", "", false
	}
	if i > 0 {
		d, _ := ByID(q.Detail.Flow[i-1])
		ahead = "behind the " + d.Name
	}
	if i < len(q.Detail.Flow)-1 {
		d, _ := ByID(q.Detail.Flow[i+1])
		if ahead != "" {
			behind = "and "
		}
		behind += "ahead of the " + d.Name
	}
	return ahead, behind, true
}

// Mark judges the place that was marked as wrong; At of the spot is a station.
func (q *Question) Mark(s Spot) Judgement {
	if slices.Contains(q.Places, s) {
		return Judgement{true, -1, q.Fault.Did}
	}
	return Judgement{false, -1, "That one is as it should be."}
}
