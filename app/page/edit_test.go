package page

import (
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

func at(text string) edit { return edit{text, length16(text), length16(text)} }

func TestKeysWriteALine(t *testing.T) {
	units := []string{"psi", "kPa", "ft"}
	for _, row := range []struct {
		name string
		got  edit
		want string
		at   int
	}{
		{"digit at the end", at("4").insert("1"), "41", 2},
		{"digit in the middle", edit{"43", 1, 1}.insert("1"), "413", 2},
		{"digit over a selection", edit{"80 − 41", 0, 2}.insert("9"), "9 − 41", 1},
		{"operator has spaces", at("80").operator("−"), "80 − ", 5},
		{"operator after a space", at("80 ").operator("−"), "80 − ", 5},
		{"sign at the start", at("").operator("−"), "−", 1},
		{"sign in a bracket", at("2 × (").operator("−"), "2 × (−", 6},
		{"bracket opens", at("0.433 × ").bracket(), "0.433 × (", 9},
		{"bracket closes after a number", at("(90 + 6").bracket(), "(90 + 6)", 8},
		{"bracket opens with none open", at("12").bracket(), "12(", 3},
		{"unit", at("41.6").unit("psi", units), "41.6 psi", 8},
		{"unit in place of another", at("41.6 psi").unit("kPa", units), "41.6 kPa", 8},
		{"unit joined to its number", at("41.6psi").unit("kPa", units), "41.6 kPa", 8},
		{"unit in the middle", edit{"96 + 6", 2, 2}.unit("ft", units), "96 ft + 6", 5},
		{"degrees stand close", at("140").unit("°F", []string{"°F"}), "140°F", 5},
		{"back", at("41.6").back(), "41.", 3},
		{"back over an operator", at("80 − ").back(), "80", 2},
		{"back over a selection", edit{"80 − 41", 2, 7}.back(), "80", 2},
		{"back at the start", edit{"80", 0, 0}.back(), "80", 0},
		{"back over one sign beyond the basic plane", at("4😀").back(), "4", 1},
		{"left", at("41").move(-1), "41", 1},
		{"left at the start", edit{"41", 0, 0}.move(-1), "41", 0},
		{"right", edit{"41", 0, 0}.move(1), "41", 1},
		{"left out of a selection", edit{"41.6", 1, 3}.move(-1), "41.6", 1},
		{"right out of a selection", edit{"41.6", 1, 3}.move(1), "41.6", 3},
		{"a selection past the end", edit{"41", 7, 9}.insert("6"), "416", 3},
	} {
		assert.Equal(t, row.want, row.got.text, row.name)
		assert.Equal(t, row.at, row.got.start, row.name)
		assert.Equal(t, row.at, row.got.end, row.name)
	}
}

func TestAFullLineStays(t *testing.T) {
	e := at("")
	for range 500 {
		e = e.insert("7")
	}
	assert.Equal(t, maxLine, length16(e.text))
}

func FuzzEdit(f *testing.F) {
	f.Add("80 − 41.6 psi", 3, 5)
	f.Add("4😀", 2, 2)
	f.Add("", -1, 9)
	f.Fuzz(func(t *testing.T, text string, start, end int) {
		e := edit{text, start, end}
		for _, got := range []edit{
			e.insert("1"), e.operator("×"), e.bracket(), e.unit("psi", []string{"psi"}), e.back(), e.move(-1), e.move(1),
		} {
			assert.True(t, utf8.ValidString(got.text) || !utf8.ValidString(text))
			if got != e {
				assert.LessOrEqual(t, got.start, length16(got.text))
				assert.Equal(t, got.start, got.end)
			}
		}
	})
}
