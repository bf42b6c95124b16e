package draw

import (
	"strconv"
	"strings"

	"rsc.io/qr"
)

// quiet is the empty modules around a code that readers need: ISO/IEC
// 18004:2015, clause 6.3.8 (from memory).
const quiet = 4

// QR is a text as a QR code, one path on white; false where it is too long
// for one.
func QR(text, label string) (Node, bool) {
	code, err := qr.Encode(text, qr.M)
	if err != nil {
		if code, err = qr.Encode(text, qr.L); err != nil {
			return Node{}, false
		}
	}
	side := strconv.Itoa(code.Size + 2*quiet)
	return Node{Tag: "svg", Attrs: []Attr{
		{"xmlns", Namespace}, {"viewBox", "0 0 " + side + " " + side}, {"data-part", "qr"}, {"role", "img"}, {"aria-label", label}, {"shape-rendering", "crispEdges"},
	}, Kids: []Node{
		{Tag: "rect", Attrs: []Attr{{"width", side}, {"height", side}, {"fill", "white"}}},
		{Tag: "path", Attrs: []Attr{{"d", modules(code)}, {"fill", "black"}}},
	}}, true
}

// modules are the black modules as runs along the rows.
func modules(code *qr.Code) string {
	var d strings.Builder
	for y := range code.Size {
		for x := 0; x < code.Size; x++ {
			from := x
			for x < code.Size && code.Black(x, y) {
				x++
			}
			if n := strconv.Itoa(x - from); x > from {
				d.WriteString("M" + strconv.Itoa(from+quiet) + " " + strconv.Itoa(y+quiet) + "h" + n + "v1h-" + n + "z")
			}
		}
	}
	return d.String()
}

// SVG is the element as a text.
func (n Node) SVG() string {
	var b strings.Builder
	n.write(&b)
	return b.String()
}
