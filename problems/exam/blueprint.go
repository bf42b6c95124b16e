// Package exam draws mock papers: so many questions of each chapter, some to
// be worked out and some to be reasoned about, in the time that a trade
// examination gives. A paper follows from a short code, so that it can be sat
// again. Nothing here knows a clock; the page does.
package exam

import (
	"slices"

	"riserwork/problems"
	"riserwork/solver"
)

// Share is how much of a paper is of a chapter, in percent.
type Share struct{ Chapter, Percent int }

// Blueprint says what a paper is made of.
type Blueprint struct {
	ID     string
	Title  string
	Note   string
	Shares []Share // they add up to 100
	Years  int     // sums of the school years up to this one; 0: of all
}

// Chapters whose questions are reasoned about and not worked out.
const (
	devicesChapter = 10
	faultsChapter  = 11
)

// Blueprints are those to choose from, the usual one first. New ones go to
// the end, since a code counts them.
var Blueprints = []Blueprint{
	{
		ID: "water", Title: "Water supply", Note: "sums, devices and faults, as an examination mixes them",
		Shares: []Share{{1, 10}, {2, 5}, {3, 20}, {4, 10}, {5, 15}, {6, 10}, {7, 10}, {8, 5}, {devicesChapter, 10}, {faultsChapter, 5}},
	},
	{
		ID: "early", Title: "First two years", Note: "sums of school years 1 and 2, devices and faults",
		Shares: []Share{{1, 35}, {2, 10}, {3, 20}, {4, 5}, {5, 5}, {6, 10}, {devicesChapter, 10}, {faultsChapter, 5}},
		Years:  2,
	},
	{
		ID: "sums", Title: "Sums only", Note: "every question is worked out",
		Shares: []Share{{1, 15}, {2, 5}, {3, 20}, {4, 15}, {5, 15}, {6, 10}, {7, 10}, {8, 10}},
	},
	{
		ID: "reasons", Title: "Devices and faults only", Note: "nothing to work out",
		Shares: []Share{{devicesChapter, 60}, {faultsChapter, 40}},
	},
}

// BlueprintByID is the blueprint of an id; false where there is none.
func BlueprintByID(id string) (*Blueprint, bool) {
	i := slices.IndexFunc(Blueprints, func(b Blueprint) bool { return b.ID == id })
	if i < 0 {
		return nil, false
	}
	return &Blueprints[i], true
}

// Weighing says where the shares and the time come from.
var Weighing = []problems.Source{
	{Says: "The Red Seal Occupational Standard for the Plumber (Employment and Social Development Canada, 2016) makes water service and distribution one of its major work activities", Confidence: solver.Confirmed},
	{Says: "That activity weighs about 18 % of the plumber's examination, which takes up to 4 hours", Confidence: solver.Memory},
	{Says: "Examinations of that series have 120 questions (Sheet Metal Worker) or 125 (Lather), in their published weightings", Confidence: solver.Confirmed},
	{Says: "The share of each chapter, since the standard weighs tasks and not sums; and 5 minutes for a written answer: common practice, no source", Confidence: solver.Practice},
}

// Lengths are how many questions a paper may have. New ones go to the end.
var Lengths = []int{20, 10, 40}

// Minutes that a question is given. Four hours for 120 or 125 questions to
// choose from are about two minutes each; a written answer takes longer.
const (
	minutesToChoose = 2
	minutesToWrite  = 5
)

// Count is how many questions of a chapter a paper has.
type Count struct{ Chapter, Questions int }

// Counts shares n questions out over the chapters, by largest remainders; of
// two alike the earlier chapter gets the question.
func (b *Blueprint) Counts(n int) []Count {
	list := make([]Count, len(b.Shares))
	order := make([]int, len(b.Shares))
	left := n
	for i, s := range b.Shares {
		list[i] = Count{s.Chapter, n * s.Percent / 100}
		left -= list[i].Questions
		order[i] = i
	}
	slices.SortStableFunc(order, func(x, y int) int {
		return n*b.Shares[y].Percent%100 - n*b.Shares[x].Percent%100
	})
	for _, i := range order[:left] {
		list[i].Questions++
	}
	return list
}
