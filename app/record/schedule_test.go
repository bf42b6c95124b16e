package record

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The reference implementation of the scheduler, ts-fsrs 5.4.2 in days only,
// from 1970-01-01 at due times.
func TestTheScheduleIsThatOfTheReference(t *testing.T) {
	var c Card
	day := 0
	for i, row := range []struct {
		right     bool
		stability float64
		days      int
	}{
		{true, 2.3065, 3}, {true, 13.82690, 14}, {true, 56.95671, 57},
		{false, 3.18813, 3}, {true, 8.08078, 8}, {true, 19.13476, 19},
	} {
		c = c.Tried(day, row.right)
		assert.InDelta(t, row.stability, c.Stability, 5e-6, "try %d", i+1)
		assert.Equal(t, row.days, c.Due-day, "try %d", i+1)
		day = c.Due
	}
}

// Histories drawn at random and worked out by ts-fsrs 5.4.2; see the source
// column of the file.
func TestTheScheduleOfManyHistories(t *testing.T) {
	f, err := os.Open("../../testdata/fsrs_histories.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 150)
	var c Card
	for _, row := range rows[1:] {
		if row[1] == "1" {
			c = Card{}
		}
		day, err := strconv.Atoi(row[2])
		require.NoError(t, err)
		c = c.Tried(day, row[3] == "good")
		for i, got := range []float64{c.Stability, c.Difficulty, float64(c.Due - day)} {
			want, err := strconv.ParseFloat(row[4+i], 64)
			require.NoError(t, err)
			assert.InDelta(t, want, got, 1e-7*max(1, want), "%v", row)
		}
	}
}

func TestADayCountsOnce(t *testing.T) {
	c := Card{}.Tried(100, false)
	assert.Equal(t, c, c.Tried(100, true))
	assert.Equal(t, c, c.Tried(99, true), "a clock that was put back")
	assert.NotEqual(t, c, c.Tried(101, true))
	assert.InDelta(t, 0.9, (&Card{Last: 100, Stability: 10, Difficulty: 5}).Kept(110), 1e-12, "by what stability means")
}

func TestACardThatCannotBeBeginsAgain(t *testing.T) {
	assert.Equal(t, Card{}.Tried(5, true), Card{Last: 1, Due: 2, Stability: 1e-9, Difficulty: 400}.Tried(5, true))
}

func TestEverythingIsDueBeforeTheExamination(t *testing.T) {
	const exam = 200
	for turn := range 50 {
		for last := 100; last < exam; last++ {
			c := Card{Last: last, Due: last + 300, Stability: 300, Difficulty: 5}
			due := c.DueBy(exam, turn)
			if last >= exam-lastRound {
				assert.Equal(t, c.Due, due, "it was worked in the last round")
				continue
			}
			assert.Greater(t, due, last)
			assert.Less(t, due, exam)
			assert.GreaterOrEqual(t, due, exam-lastRound)
		}
		c := Card{Last: 100, Due: 103, Stability: 3, Difficulty: 5}
		assert.Equal(t, 103, c.DueBy(exam, turn), "what is due sooner stays")
		assert.Equal(t, 103, c.DueBy(0, turn))
	}
}
