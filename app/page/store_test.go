package page

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v9/pkg/app"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/problems"
	"riserwork/solver/unit"
)

// memory is a browser's storage as the pages see it.
type memory struct {
	app.BrowserStorage
	items map[string]string
	full  bool
}

func newMemory() *memory { return &memory{items: map[string]string{}} }

func (m *memory) Set(k string, v any) error {
	if m.full {
		return errors.New("the quota is used up")
	}
	b, err := json.Marshal(v)
	m.items[k] = string(b)
	return err
}

func (m *memory) Get(k string, v any) error {
	text, ok := m.items[k]
	if !ok {
		return nil
	}
	return json.Unmarshal([]byte(text), v)
}

func TestNothingSavedIsTheDefaults(t *testing.T) {
	m := newMemory()
	h, says := loadHouse(m)
	assert.Empty(t, says)
	assert.Equal(t, problems.Defaults, h)
	d, says := loadDesk(m)
	assert.Empty(t, says)
	assert.Empty(t, d.Sheets)
}

func TestSavedComesBack(t *testing.T) {
	m := newMemory()
	house := problems.House{System: unit.Metric, Code: "npc", TopMin: 200, Constants: []problems.Pick{{Name: "gamma", Text: "9.8"}}}
	assert.Empty(t, keepHouse(m, house))
	got, says := loadHouse(m)
	assert.Empty(t, says)
	assert.Equal(t, house, got)

	var d desk
	d.put(sheet{Skill: "floor-pressure", Version: 1, Seed: 1<<63 + 1, House: house, Lines: []entry{{Text: " 80 − 41.6 psi "}, {Hints: 2, HintAt: "4"}}})
	assert.Empty(t, keep(m, deskKey, "your lines", d))
	back, says := loadDesk(m)
	assert.Empty(t, says)
	assert.Equal(t, d, back)
}

func TestDamagedIsSaidAndSetAside(t *testing.T) {
	for name, text := range map[string]string{
		"cut off":         `{"version":1,"sheets":[{"skill":"floor-pr`,
		"another thing":   `"hello"`,
		"a list":          `[1,2,3]`,
		"a later version": `{"version":9,"sheets":[]}`,
		"no version":      `{"sheets":[]}`,
		"a field unknown": `{"version":1,"sheets":[],"more":1}`,
		"negative hints":  `{"version":1,"sheets":[{"skill":"a","version":1,"seed":1,"house":{"system":"us","code":"shop"},"lines":[{"text":"","hints":-1}]}]}`,
		"a negative seed": `{"version":1,"sheets":[{"skill":"a","version":1,"seed":-1,"house":{"system":"us","code":"shop"},"lines":[]}]}`,
		"too many sheets": `{"version":1,"sheets":[{},{},{},{},{},{},{}]}`,
		"a long line":     `{"version":1,"sheets":[{"lines":[{"text":"` + strings.Repeat("7", 2000) + `"}]}]}`,
	} {
		m := newMemory()
		m.items[deskKey] = text
		d, says := loadDesk(m)
		assert.Contains(t, says, "could not be read", name)
		assert.Empty(t, d.Sheets, name)
		if json.Valid([]byte(text)) {
			assert.JSONEq(t, text, m.items[deskKey+"-damaged"], name)
		}
	}
}

func TestARefusalIsSaid(t *testing.T) {
	m := newMemory()
	m.full = true
	assert.Contains(t, keepHouse(m, problems.Defaults), "would not save")
}

func TestSavedHouseIsMadeSound(t *testing.T) {
	m := newMemory()
	m.items[houseKey] = `{"version":1,"house":{"system":"roman","code":"none","topMin":-4,"constants":[{"name":"gamma","text":"7"},{"name":"zeta","text":"1"}]}}`
	h, says := loadHouse(m)
	assert.Empty(t, says)
	assert.Equal(t, problems.Defaults, h)
}

func TestDeskKeepsTheLatest(t *testing.T) {
	var d desk
	for seed := range uint64(10) {
		d.put(sheet{Skill: "a", Seed: seed})
	}
	d.put(sheet{Skill: "a", Seed: 7, Done: true})
	require.Len(t, d.Sheets, maxSheets)
	assert.Equal(t, uint64(7), d.Sheets[0].Seed)
	assert.True(t, d.Sheets[0].Done)
	assert.Equal(t, uint64(9), d.Sheets[1].Seed)
}

func FuzzDesk(f *testing.F) {
	f.Add([]byte(`{"version":1,"sheets":[{"skill":"a","version":1,"seed":1,"house":{"system":"us","code":"shop"},"lines":[{"text":"4"}]}]}`))
	f.Add([]byte(`{`))
	f.Fuzz(func(t *testing.T, raw []byte) {
		var d desk
		if decode(raw, &d) != nil {
			require.Equal(t, desk{}, d)
			return
		}
		require.LessOrEqual(t, len(d.Sheets), maxSheets)
	})
}
