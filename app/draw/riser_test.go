package draw_test

import (
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/app/draw"
	"riserwork/problems"
	"riserwork/problems/building"
	"riserwork/problems/skills"
	"riserwork/solver"
	"riserwork/solver/unit"
)

var update = flag.Bool("update", false, "write the golden drawing anew")

// TestSheet checks every building drawn: well-formed, inside the sheet,
// legible, no text over another, every level once, letters on every pipe.
func TestSheet(t *testing.T) {
	for _, tw := range towers(t) {
		t.Run(tw.name, func(t *testing.T) {
			s := draw.Riser(tw.b, solved(t, tw.b), tw.opt)
			require.NotEqual(t, "No drawing", s.Title)
			checkScene(t, s)
			checkLevels(t, tw.b, s)
			checkLetters(t, s)
		})
	}
}

// TestSkills draws the buildings of the catalogue.
func TestSkills(t *testing.T) {
	drawn := 0
	for _, skill := range skills.All() {
		for _, sys := range unit.Systems {
			for seed := uint64(1); seed <= 3; seed++ {
				p, err := problems.New(skill, seed, problems.House{System: sys})
				if err != nil {
					continue // the catalogue's own tests ask for every problem
				}
				if p.Building == nil || p.Building.Check() != nil {
					continue // a sum with no building of its own
				}
				drawn++
				opt := told(sys, p.Focus)
				for i, z := range p.Building.Zones {
					if z.Valve != nil {
						opt.Notes = append(opt.Notes, draw.Note{Level: z.Bottom, Where: draw.AtValve, Text: fmt.Sprint(50+i, " psi")})
					}
				}
				s := draw.Riser(p.Building, nil, opt)
				name := fmt.Sprint(skill.ID, " ", sys, " ", seed)
				require.NotEqual(t, "No drawing", s.Title, name)
				checkScene(t, s)
				checkLevels(t, p.Building, s)
				checkLetters(t, s)
				if t.Failed() {
					t.Fatal(name)
				}
			}
		}
	}
	t.Logf("%d buildings drawn", drawn)
	assert.Greater(t, drawn, 200)
}

func checkScene(t *testing.T, s draw.Scene) {
	t.Helper()
	checkXML(t, s.SVG())
	assert.Equal(t, 360.0, s.Width)
	sheet := draw.Box{X0: 0, Y0: 0, X1: s.Width, Y1: s.Height}
	var texts []draw.Item
	s.Walk(func(it draw.Item) {
		if it.Kind == draw.Group {
			assert.NotEmpty(t, it.Kids, "%s %s", it.Part, it.Key)
			return
		}
		b := it.Bounds()
		assert.True(t, b.Within(draw.Box{X0: -0.01, Y0: -0.01, X1: sheet.X1 + 0.01, Y1: sheet.Y1 + 0.01}), "off the sheet: %s %q %v", it.Part, it.Text, b)
		if it.Kind == draw.Text {
			assert.GreaterOrEqual(t, it.Size, 11.0, it.Text)
			texts = append(texts, it)
		}
	})
	for i, a := range texts {
		for _, b := range texts[:i] {
			assert.False(t, a.Bounds().Overlaps(b.Bounds()), "%q %v lies over %q %v", a.Text, a.Bounds(), b.Text, b.Bounds())
		}
	}
}

// checkXML reads the drawing back: balanced elements of SVG alone, with no
// style attribute and nothing that runs.
func checkXML(t *testing.T, text string) {
	t.Helper()
	known := map[string]bool{"svg": true, "desc": true, "g": true, "text": true, "rect": true, "circle": true, "polygon": true, "polyline": true}
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(t, err)
		if e, ok := tok.(xml.StartElement); ok {
			assert.True(t, known[e.Name.Local], e.Name.Local)
			assert.Equal(t, draw.Namespace, e.Name.Space)
			for _, a := range e.Attr {
				assert.NotEqual(t, "style", a.Name.Local)
				assert.NotEqual(t, "class", a.Name.Local)
				assert.False(t, strings.HasPrefix(a.Name.Local, "on"), a.Name.Local)
			}
		}
	}
}

// checkLevels asks that every level is on the sheet once: by itself, or in one
// run of levels folded together.
func checkLevels(t *testing.T, b *solver.Building, s draw.Scene) {
	t.Helper()
	index := map[string]int{}
	for i, l := range b.Levels {
		index[l.Label] = i
	}
	seen := make([]int, len(b.Levels))
	s.Walk(func(it draw.Item) {
		if it.Part != "storey" {
			return
		}
		if label, ok := strings.CutPrefix(it.Key, "level:"); ok {
			seen[index[label]]++
			return
		}
		lo, hi, ok := strings.Cut(strings.TrimPrefix(it.Key, "levels:"), "-")
		require.True(t, ok, it.Key)
		for i := index[lo]; i <= index[hi]; i++ {
			seen[i]++
		}
	})
	for i, n := range seen {
		assert.Equal(t, 1, n, "level %s", b.Levels[i].Label)
	}
}

// checkLetters asks for letters on every pipe.
func checkLetters(t *testing.T, s draw.Scene) {
	t.Helper()
	lettered := map[string]bool{}
	s.Walk(func(it draw.Item) {
		if it.Part == "letters" && it.Kind == draw.Group {
			lettered[it.Key] = true
		}
	})
	pipes := 0
	s.Walk(func(it draw.Item) {
		if it.Part == "pipe" {
			pipes++
			assert.True(t, lettered[it.Key], "no letters on %s", it.Key)
		}
		if it.Part == "cw" && it.Kind == draw.Line {
			assert.NotEmpty(t, it.Dash)
		}
	})
	assert.NotZero(t, pipes)
}

// TestFolding checks what stays drawn of a tall building, and its height.
func TestFolding(t *testing.T) {
	s := newSheet(t, 5, unit.US)
	b := stacked(s, 60)
	ask := b.Storey(31)
	scene := draw.Riser(b, nil, told(unit.US, ask))
	drawn := map[string]bool{}
	folds := 0
	scene.Walk(func(it draw.Item) {
		if it.Part == "storey" {
			drawn[it.Key] = true
			if strings.HasPrefix(it.Key, "levels:") {
				folds++
			}
		}
	})
	keep := []int{0, 1, b.Ground, b.Ground + 1, b.Top(), b.Top() - 1, ask}
	for _, z := range b.Zones {
		keep = append(keep, z.Bottom, z.Top)
	}
	for _, i := range keep {
		assert.True(t, drawn["level:"+b.Levels[i].Label], b.Levels[i].Label)
	}
	assert.Equal(t, 8, folds)
	assert.Less(t, scene.Height, 1600.0)
}

// TestAnswersHidden checks that nothing of the answer is on the sheet before
// it may be seen.
func TestAnswersHidden(t *testing.T) {
	s := newSheet(t, 5, unit.Metric)
	b := stacked(s, 30)
	sol := solved(t, b)
	opt := draw.Options{System: unit.Metric, Ask: &draw.Note{Level: b.Top()}, HideZones: true, HideElevations: true, HideDepth: true}
	scene := draw.Riser(b, sol, opt)
	all := scene.SVG() + fmt.Sprint(scene.Table)
	for _, word := range []string{"ZONE", "PRV", "kPa"} {
		assert.NotContains(t, all, word)
	}
	assert.Equal(t, 1, strings.Count(all, ">EL "), "only that of level 1")
	assert.Equal(t, []string{"Level", "What is there"}, scene.Table[0])

	opt.Solved = true
	scene = draw.Riser(b, sol, opt)
	assert.Contains(t, scene.SVG(), "PRV-2")
	assert.Contains(t, scene.SVG(), "400\u00a0kPa")
	assert.Len(t, scene.Table, len(b.Levels))
	assert.Len(t, scene.Table[0], 6)
}

func TestProfile(t *testing.T) {
	for _, tw := range towers(t) {
		t.Run(tw.name, func(t *testing.T) {
			opt := tw.opt
			opt.Min, opt.Max = 30*unit.PSI, 80*unit.PSI
			s := draw.Profile(tw.b, solved(t, tw.b), opt)
			checkScene(t, s)
			lines := 0
			s.Walk(func(it draw.Item) {
				if it.Part == "cw" && it.Kind == draw.Line {
					lines++
				}
			})
			want := max(1, len(tw.b.Zones))
			if opt.HideZones && !opt.Solved {
				want = 1
			}
			if !opt.Solved {
				want-- // that of the level asked about
			}
			assert.Equal(t, want, lines)
		})
	}
}

func TestRefused(t *testing.T) {
	for _, b := range []*solver.Building{nil, {}, {Levels: []solver.Level{{Label: "1"}}}} {
		for _, s := range []draw.Scene{draw.Riser(b, nil, draw.Options{}), draw.Profile(b, nil, draw.Options{})} {
			assert.Equal(t, "No drawing", s.Title)
			assert.NotEmpty(t, s.Desc)
			checkScene(t, s)
		}
	}
}

// TestEscaped draws names that would break out of the text.
func TestEscaped(t *testing.T) {
	s := newSheet(t, 3, unit.US)
	tw := s.Tower(building.Plan{Min: 4, Max: 4})
	s.Street(0, "on the gauge in the meter room")
	evil := `<script>"&'`
	tw.Zones = []solver.Zone{{Name: evil, Top: tw.Top(), Supply: solver.FromStreet}}
	tw.Levels[1].Label = evil
	scene := draw.Riser(tw.Building, nil, draw.Options{System: unit.US, Ask: &draw.Note{Level: 2, Text: evil}, Notes: []draw.Note{{Level: 99, Where: "nowhere", Text: evil}, {Level: -9, Where: draw.AtFloor, Text: strings.Repeat("W", 400)}}})
	checkXML(t, scene.SVG())
	assert.NotContains(t, scene.SVG(), "<script")
}

// TestGolden holds the drawing of one small building.
func TestGolden(t *testing.T) {
	b := &solver.Building{
		Use: solver.Apartment, HighOutlet: 6.5 * unit.Foot, LowOutlet: 0.7 * unit.Foot,
		Levels: []solver.Level{
			{Label: "1", Role: solver.GroundRole, Height: 12 * unit.Foot},
			{Label: "2", Role: solver.Typical, Elevation: 12 * unit.Foot, Height: 9 * unit.Foot},
			{Label: "3", Role: solver.Typical, Elevation: 21 * unit.Foot, Height: 9 * unit.Foot},
			{Label: "Roof", Role: solver.Roof, Elevation: 30 * unit.Foot},
		},
		Street: solver.Street{Static: 62 * unit.PSI, Low: 55 * unit.PSI, GaugeName: "on the gauge in the meter room", MainDepth: 5 * unit.Foot},
	}
	scene := draw.Riser(b, nil, draw.Options{System: unit.US, Ask: &draw.Note{Level: 2, Text: "? psi"}, Notes: []draw.Note{{Where: draw.AtGauge, Text: "62 psi"}}})
	const file = "testdata/three_storeys.svg"
	if *update {
		require.NoError(t, os.WriteFile(file, []byte(scene.SVG()), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(want), scene.SVG())
}
