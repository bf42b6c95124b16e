package skills_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"riserwork/problems"
	"riserwork/problems/skills"
)

func TestZZShow(t *testing.T) {
	hs := houses()
	for _, id := range strings.Split(os.Getenv("SHOW"), ",") {
		s, ok := skills.ByID(id)
		if !ok {
			t.Fatal(id)
		}
		for i, h := range hs[:4] {
			p, err := problems.New(s, uint64(7+i), h)
			if err != nil {
				t.Fatal(err)
			}
			fmt.Println("==", id, h.System, h.Code, p.AskText())
			for _, l := range p.Worked() {
				fmt.Println("   ", l.Says, "|", l.Symbols, "|", l.Numbers, "=", l.Value)
			}
		}
	}
}

func TestZZCount(t *testing.T) {
	for _, id := range strings.Split(os.Getenv("SHOW"), ",") {
		s, _ := skills.ByID(id)
		for _, h := range houses() {
			n := map[string]int{}
			for seed := range uint64(200) {
				p, _ := problems.New(s, seed, h)
				a := p.Answer()
				k := a.Text(a.Value)
				if len(a.Choices) == 0 {
					k = "sum"
				}
				if id == "recirculation-required" {
					k += fmt.Sprint(" L", p.Steps[2].Value, " S", p.Env()[4])
				}
				n[k]++
			}
			fmt.Println(id, h.System, h.Code, n)
		}
	}
}
