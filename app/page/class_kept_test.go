package page

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems/sets"
)

func TestAClassIsKeptWhole(t *testing.T) {
	byHand := []sets.Override{{Learner: "Jo", Problem: 3, Marks: 0, Reason: "as \"said\""}}
	pieces := []sets.Piece{{Source: "a.rwork", Data: []byte("{}")}, {Source: "QR code", Data: []byte("rwork1.x.")}}
	data := packKept("AbC", byHand, pieces)
	code, hand, back, err := readKept(data)
	require.NoError(t, err)
	assert.Equal(t, "AbC", code)
	assert.Equal(t, byHand, hand)
	assert.Equal(t, pieces, back)
	whole := len(packKept("AbC", byHand, nil))
	first := len(packKept("AbC", byHand, pieces[:1]))
	for n := range data {
		_, _, _, err := readKept(data[:n])
		if n == whole || n == first {
			assert.NoError(t, err, "a class with fewer hand-ins")
			continue
		}
		assert.Error(t, err, n)
	}
	_, _, _, err = readKept(append([]byte{9}, data[1:]...))
	assert.Error(t, err)
}

func TestManyHandInsAreShownAFewAtATime(t *testing.T) {
	c := &classPage{}
	r := sets.Report{Counted: 120}
	for i := range 130 {
		r.Papers = append(r.Papers, sets.Paper{Learner: fmt.Sprint(i)})
	}
	c.report = &r
	for _, row := range []struct{ from, shown, counted int }{{0, 50, 50}, {50, 50, 50}, {100, 30, 20}, {150, 0, 0}} {
		c.from = row.from
		assert.Len(t, c.shown(), row.shown)
		assert.Len(t, c.shownCounted(), row.counted)
	}
}
