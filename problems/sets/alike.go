package sets

import (
	"cmp"
	"encoding/binary"
	"hash/fnv"
	"slices"
	"unicode"
)

// Alike is the same wrong working of two learners whose numbers differ. It is
// something to look at and to ask about, not a finding: two people may have
// worked at one table.
type Alike struct {
	A       string `json:"a"`
	B       string `json:"b"`
	Lines   int    `json:"lines"`   // wrong lines that are the same
	Problem []int  `json:"problem"` // where, the first being 1
}

// fewestAlike is how many lines must be the same before it is told.
const fewestAlike = 2

// linePrint is a number for a line without its spaces and capitals; 0 where
// it has too few digits to be told from another.
func linePrint(text string) uint64 {
	h := fnv.New64a()
	digits := 0
	for _, r := range text {
		if unicode.IsSpace(r) {
			continue
		}
		if unicode.IsDigit(r) {
			digits++
		}
		h.Write(binary.AppendUvarint(nil, uint64(unicode.ToLower(r))))
	}
	if digits < 3 {
		return 0
	}
	return h.Sum64()
}

// fingerprint is a number for all that was written, so that copies are known.
func fingerprint(h *HandIn) uint64 {
	f := fnv.New64a()
	f.Write([]byte(Key(h.Learner) + h.checksum()))
	return f.Sum64()
}

// place of a wrong line: who wrote it, and in which problem.
type wrote struct {
	print       uint64
	paper, item int
	seed        uint64
}

// alike finds pairs of papers with the same wrong lines on other numbers.
func alike(papers []*Paper) []Alike {
	var all []wrote
	for n, p := range papers {
		for i := range p.Items {
			m := &p.Items[i]
			for k, print := range m.wrongs {
				if !slices.Contains(m.wrongs[:k], print) {
					all = append(all, wrote{print, n, i, m.seed})
				}
			}
		}
	}
	slices.SortFunc(all, func(a, b wrote) int {
		return cmp.Or(cmp.Compare(a.item, b.item), cmp.Compare(a.print, b.print), cmp.Compare(a.paper, b.paper))
	})
	return pairs(papers, all)
}

// commonLine is how many learners may share a line before it is taken for one
// that the problem itself leads to.
const commonLine = 8

func pairs(papers []*Paper, all []wrote) []Alike {
	type pair struct{ a, b int }
	found := map[pair]*Alike{}
	var order []pair
	for from := 0; from < len(all); {
		to := from + 1
		for to < len(all) && all[to].item == all[from].item && all[to].print == all[from].print {
			to++
		}
		run := all[from:to]
		from = to
		if len(run) > commonLine {
			continue
		}
		for i, a := range run {
			for _, b := range run[i+1:] {
				if a.seed == b.seed {
					continue
				}
				at := pair{a.paper, b.paper}
				f := found[at]
				if f == nil {
					f = &Alike{A: papers[a.paper].Learner, B: papers[b.paper].Learner}
					found[at], order = f, append(order, at)
				}
				f.Lines++
				if !slices.Contains(f.Problem, a.item+1) {
					f.Problem = append(f.Problem, a.item+1)
				}
			}
		}
	}
	var list []Alike
	for _, at := range order {
		if f := found[at]; f.Lines >= fewestAlike {
			list = append(list, *f)
		}
	}
	slices.SortStableFunc(list, func(a, b Alike) int {
		return cmp.Or(b.Lines-a.Lines, cmp.Compare(Key(a.A), Key(b.A)), cmp.Compare(Key(a.B), Key(b.B)))
	})
	return list
}
