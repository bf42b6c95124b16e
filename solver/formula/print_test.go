package formula_test

import (
	"encoding/xml"
	"errors"
	"io"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"riserwork/solver/formula"
)

func TestText(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"(street_pressure-residual)/gamma", "(street pressure − residual) / gamma"},
		{"((a*b))*c", "a × b × c"},
		{"a*(b*c)", "a × (b × c)"},
		{"a-(b+c)", "a − (b + c)"},
		{"a/(b*c)", "a / (b × c)"},
		{"-(a+b)^2", "−(a + b)²"},
		{"(a<b) and (b>=c or a>c)", "a < b and (b ≥ c or a > c)"},
		{"sqrt(a/b)", "√(a / b)"},
		{"min(a, b)", "min(a; b)"},
		{"62psi - 0.433psi/ft x 96ft", "62\u00a0psi − 0.433\u00a0psi/ft × 96\u00a0ft"},
		{"199,920 x a", "199920 × a"},
		{"96 100 x a", "96 100 × a"},
	} {
		e, err := formula.Parse(row.text)
		require.NoError(t, err, row.text)
		assert.Equal(t, row.want, e.Text())
	}
}

func TestNumbers(t *testing.T) {
	e, err := formula.Parse("street - gamma x height - low + d^2")
	require.NoError(t, err)
	got := e.Numbers(func(name string) string {
		return map[string]string{"street": "62 psi", "gamma": "0.433 psi/ft", "height": "96 ft", "low": "−3 psi", "d": "2 in"}[name]
	})
	assert.Equal(t, "62 psi − 0.433 psi/ft × 96 ft − (−3 psi) + (2 in)²", got)
}

// What MathML Core (W3C) has for fractions, roots and powers: mfrac, msqrt,
// msup.
func TestMathML(t *testing.T) {
	for _, row := range []struct{ text, want string }{
		{"(street - low) / gamma", "<mfrac><mrow><mtext>street</mtext><mo>−</mo><mtext>low</mtext></mrow><mtext>gamma</mtext></mfrac>"},
		{"a / b x c", "<mrow><mfrac><mi>a</mi><mi>b</mi></mfrac><mo>×</mo><mi>c</mi></mrow>"},
		{"(a / b)^2", "<msup><mrow><mo>(</mo><mfrac><mi>a</mi><mi>b</mi></mfrac><mo>)</mo></mrow><mn>2</mn></msup>"},
		{"√(a/b)", "<msqrt><mfrac><mi>a</mi><mi>b</mi></mfrac></msqrt>"},
		{"a < 5 psi", "<mrow><mi>a</mi><mo>&lt;</mo><mrow><mn>5</mn><mtext>\u00a0psi</mtext></mrow></mrow>"},
		{"-a x (b + c)", "<mrow><mrow><mo>−</mo><mi>a</mi></mrow><mo>×</mo><mrow><mo>(</mo><mrow><mi>b</mi><mo>+</mo><mi>c</mi></mrow><mo>)</mo></mrow></mrow>"},
		{"roundup(floor_height)", "<mrow><mi>roundup</mi><mo>(</mo><mtext>floor height</mtext><mo>)</mo></mrow>"},
		{"85%", "<mrow><mn>85</mn><mo>%</mo></mrow>"},
		{"a^(b + 1)", "<msup><mi>a</mi><mrow><mi>b</mi><mo>+</mo><mn>1</mn></mrow></msup>"},
		{`8'-10" x a`, "<mrow><mn>8'-10&quot;</mn><mo>×</mo><mi>a</mi></mrow>"},
	} {
		e, err := formula.Parse(row.text)
		require.NoError(t, err, row.text)
		assert.Equal(t, row.want, e.MathML(nil), row.text)
	}
	e, err := formula.Parse("gamma x h")
	require.NoError(t, err)
	assert.Equal(t, "<mrow><mi>γ</mi><mo>×</mo><mtext>&lt;h&gt;</mtext></mrow>", e.MathML(func(s string) string {
		if s == "gamma" {
			return "γ"
		}
		return "<" + s + ">"
	}))
}

func TestMathMLIsWellFormed(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 500 {
		text := randomTree(r, 4)
		if len(text) > 1000 {
			continue
		}
		e, err := formula.ParseWith(text, withDouble)
		require.NoError(t, err, text)
		d := xml.NewDecoder(strings.NewReader(e.MathML(nil)))
		for {
			_, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err, text)
		}
	}
}

func TestRootIsTheLayout(t *testing.T) {
	e, err := formula.Parse("(street - 5 psi) / gamma")
	require.NoError(t, err)
	assert.Equal(t, formula.Node{Kind: formula.FracNode, Kids: []formula.Node{
		{Kind: formula.OpNode, Op: "−", Kids: []formula.Node{
			{Kind: formula.NameNode, Name: "street"},
			{Kind: formula.NumberNode, Text: "5", Unit: "psi"},
		}},
		{Kind: formula.NameNode, Name: "gamma"},
	}}, e.Root())
}
