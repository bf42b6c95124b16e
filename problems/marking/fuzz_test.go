package marking_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"riserwork/problems"
	"riserwork/problems/marking"
	"riserwork/problems/skills"
)

// FuzzSheet marks whatever is typed as working of a few very different
// skills: nothing may stop it, and every line gets a verdict and words.
func FuzzSheet(f *testing.F) {
	var ps []*problems.Problem
	for k, id := range []string{"floor-pressure", "booster-shortfall", "mixing-valve", "tallest-zone", "reach-with-losses", "recirculation-required"} {
		s, ok := skills.ByID(id)
		if !ok {
			f.Fatalf("skill %s is not there", id)
		}
		p, err := problems.New(s, uint64(k), houses[k%len(houses)])
		if err != nil {
			f.Fatal(err)
		}
		ps = append(ps, p)
		for n, w := range writings {
			l := w.learner
			l.rng = rand.New(rand.NewPCG(uint64(n), 1))
			lines, _ := freeText(l.work(p, nil))
			f.Add(uint8(k), strings.Join(lines, "\n"))
		}
	}
	for _, text := range []string{
		"", "\n\n", "=", "= = =", "1e99 psi", "-0 psi", "0/0", "1/0 psi", "((((((((1))))))))", "9^9^9^9 ft",
		"62 psi - 0.433 psi/ft × 96 ft ≈ 20.4 psi ✓", "no, not needed", "yes no yes", "½ ft", "8'-10\"", "1.000.000,5 kPa", "psi", "lost", "lost = lost", "√(-4) psi",
		strings.Repeat("41.6 psi\n", 70), strings.Repeat("1+", 190) + "1 psi", strings.Repeat("9", 400),
	} {
		f.Add(uint8(0), text)
	}
	f.Fuzz(func(t *testing.T, which uint8, text string) {
		p := ps[int(which)%len(ps)]
		lines := strings.Split(text, "\n")
		r := marking.Lines(p, lines)
		sound(t, r, len(lines))
		sound(t, marking.Blanks(p, lines), len(p.Steps))
	})
}

// sound checks what holds of every result.
func sound(t *testing.T, r marking.Result, lines int) {
	if len(r.Lines) != lines {
		t.Fatalf("%d lines were written and %d found", lines, len(r.Lines))
	}
	if r.Marks < 0 || r.Marks > r.Of || r.First < -1 || r.First >= max(lines, 1) {
		t.Fatalf("%d of %d marks, first fault at %d", r.Marks, r.Of, r.First)
	}
	for _, f := range r.Lines {
		if f.Verdict == "" || f.Says == "" && f.Verdict != marking.Empty || f.Step >= len(r.Problem.Steps) || f.Step < -1 {
			t.Fatalf("%q is %q at step %d: %q", f.Text, f.Verdict, f.Step, f.Says)
		}
		for _, s := range f.Slips {
			if strings.ContainsAny(s.Did+s.Why+s.Next, "{}") {
				t.Fatalf("%q: a text is not filled: %+v", f.Text, s)
			}
		}
	}
}
