package record

import (
	"time"

	"github.com/open-spaced-repetition/go-fsrs/v4"
)

// Card is when a skill is due, in whole days from 1970-01-01, and how firmly
// it is thought to be kept.
type Card struct {
	Due        int     `json:"due,omitempty"`
	Last       int     `json:"last,omitempty"`
	Stability  float64 `json:"s,omitempty"` // days after which nine in ten are still right
	Difficulty float64 `json:"d,omitempty"` // 1 to 10
}

// scheduler counts in days, has two outcomes and draws nothing at random.
var scheduler = fsrs.NewFSRS(parameters())

func parameters() fsrs.Parameters {
	p := fsrs.DefaultParam()
	p.EnableShortTerm, p.EnableFuzz = false, false
	return p
}

func at(day int) time.Time { return time.Unix(int64(day)*24*60*60, 0).UTC() }

// new reports whether the skill was never tried.
func (c *Card) new() bool { return c.Stability == 0 }

// Tried is the card after a try on a day. A day counts once, by its first
// try: what is right again an hour later says little about next month.
func (c Card) Tried(day int, right bool) Card {
	if !c.new() && day <= c.Last {
		return c
	}
	old := fsrs.NewCard(at(day))
	if !c.new() {
		old.State, old.Due, old.LastReview = fsrs.Review, at(c.Due), at(c.Last)
		old.Stability, old.Difficulty = c.Stability, c.Difficulty
	}
	outcome := fsrs.Again
	if right {
		outcome = fsrs.Good
	}
	next, err := scheduler.Next(old, at(day), outcome)
	if err != nil {
		// A card that was brought with numbers out of range begins again.
		return Card{}.Tried(day, right)
	}
	return Card{
		Due: day + int(next.Card.ScheduledDays), Last: day,
		Stability: next.Card.Stability, Difficulty: next.Card.Difficulty,
	}
}

// Kept is the chance, from 0 to 1, that the skill is still right on a day.
func (c *Card) Kept(day int) float64 {
	if c.new() {
		return 0
	}
	return scheduler.ForgettingCurve(float64(max(day-c.Last, 0)), c.Stability)
}

// Days before an examination over which the last round is spread.
const lastRound = 21

// DueBy is the day the skill is due, moved up so that every skill is worked
// once in the three weeks before the examination; exam 0 means none. turn spreads
// the skills over them.
func (c *Card) DueBy(exam, turn int) int {
	latest := exam - 1 - turn%lastRound
	if exam == 0 || c.Due <= latest || c.Last >= exam-lastRound {
		return c.Due
	}
	return max(latest, c.Last+1)
}
