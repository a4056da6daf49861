package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"standclear/geom"
	"standclear/render"
	"standclear/render/font"
)

func v(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }

// page is a sheet of 200 x 100 mm with the items on paper.
func page(items ...render.Item) *render.Sheet {
	return &render.Sheet{ID: "A-301", Title: "SECTION", Desc: "A wall.", Size: render.Size{W: 200, H: 100}, Items: items}
}

// sample is a sheet with a little of everything.
func sample() *render.Sheet {
	diag := &render.HatchPattern{Name: "SC-45", Lines: []render.PatternLine{{Angle: 45, Spacing: 3}}}
	block := &render.Tag{Mark: "B3", Material: "LUMBER", Size: `5 1/2" x 9 1/4"`, Role: "block"}
	items := []render.Item{
		render.Fill{Pen: render.Pattern, Region: geom.Rect(0, 0, 100, 200), Pattern: diag, Tag: block},
		render.Fill{Pen: render.Pattern, Region: geom.Rect(20, 80, 80, 120), White: true},
		render.Stroke{Pen: render.CutMain, Path: geom.Rect(0, 0, 100, 200)[0], Tag: block},
		render.Stroke{Pen: render.Centre, Path: geom.Polyline(v(-20, 50), v(120, 50))},
		render.Stroke{Pen: render.Visible, Path: geom.Circle(v(50, 50), 12)[0]},
		render.Text{Pen: render.Note, At: v(50, 100), Height: 2.5, Align: render.MiddleCentre, Lines: []string{"BLOCK", "B3 <&>"}},
		render.Dim{Pen: render.Dimension, Kind: render.Linear, P: v(0, 0), Q: v(0, 200), Line: v(-30, 0), Angle: 90},
		render.Leader{Pen: render.Note, Points: []geom.Vec{v(100, 150), v(150, 180)}},
	}
	s := page(render.Text{Pen: render.Heading, At: v(190, 10), Height: 5, Align: render.BottomRight, Lines: []string{"A-301"}, Bold: true})
	s.Props = [][2]string{{"parameters", "1a2b3c4d"}}
	s.Views = []render.View{{ID: "1", Title: `AT "B3"`, Scale: render.Scale{K: 5}, At: v(60, 30), Window: geom.Box{Min: v(-100, -50), Max: v(200, 250)}, Items: items}}
	return s
}

func write(t *testing.T, s *render.Sheet, o Options) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, s, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// node is an element as read back.
type node struct {
	XMLName xml.Name
	Attrs   []xml.Attr `xml:",any,attr"`
	Text    string     `xml:",chardata"`
	Nodes   []node     `xml:",any"`
}

func (n node) attr(name string) string {
	for _, a := range n.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// all returns the elements of a name under n, in order.
func (n node) all(name string) []node {
	var found []node
	for _, c := range n.Nodes {
		if c.XMLName.Local == name {
			found = append(found, c)
		}
		found = append(found, c.all(name)...)
	}
	return found
}

func read(t *testing.T, doc string) node {
	t.Helper()
	var n node
	if err := xml.Unmarshal([]byte(doc), &n); err != nil {
		t.Fatalf("%v in\n%s", err, doc)
	}
	return n
}

func TestTrueSize(t *testing.T) {
	s := page()
	s.Size = render.Size{W: 914.4, H: 609.6}
	n := read(t, write(t, s, Options{}))
	for name, want := range map[string]string{"width": "914.4mm", "height": "609.6mm", "viewBox": "0 0 914.4 609.6", "role": "img"} {
		if got := n.attr(name); got != want {
			t.Errorf("%s = %q, want %q", name, got, want)
		}
	}
	if n.Nodes[0].XMLName.Local != "title" || n.Nodes[0].Text != "A-301 SECTION" || n.Nodes[1].Text != "A wall." {
		t.Errorf("opens with %+v", n.Nodes[:2])
	}
	if by := n.attr("aria-labelledby"); by != n.Nodes[0].attr("id")+" "+n.Nodes[1].attr("id") {
		t.Errorf("named by %q", by)
	}
}

func TestInline(t *testing.T) {
	alone, inside := write(t, sample(), Options{}), write(t, sample(), Options{Inline: true, Prefix: "Deck 2"})
	if !strings.HasPrefix(alone, "<?xml version") || !strings.HasPrefix(inside, "<svg ") {
		t.Errorf("open with %q and %q", alone[:20], inside[:20])
	}
	ids := regexp.MustCompile(` id="([^"]*)"`)
	for doc, prefix := range map[string]string{alone: "a-301", inside: "deck-2"} {
		seen := map[string]bool{}
		for _, m := range ids.FindAllStringSubmatch(doc, -1) {
			if seen[m[1]] || !strings.HasPrefix(m[1], prefix) {
				t.Errorf("id %q", m[1])
			}
			seen[m[1]] = true
		}
		for _, m := range regexp.MustCompile(`url\(#([^)]*)\)`).FindAllStringSubmatch(doc, -1) {
			if !seen[m[1]] {
				t.Errorf("nothing has the id %q", m[1])
			}
		}
	}
}

func TestIdent(t *testing.T) {
	for in, want := range map[string]string{"A-301": "a-301", "": "sheet-", "301": "sheet-301", "\u00c4 \"x\"": "sheet----x-", "-a": "sheet--a"} {
		if got := ident("", in); got != want {
			t.Errorf("ident(%q) = %q, want %q", in, got, want)
		}
	}
}

func TestAsksForNothingOutside(t *testing.T) {
	doc := write(t, sample(), Options{})
	for _, bad := range []string{"<script", "href", "<image", "@import", "NaN", "Inf", "-0 ", `"-0"`, "-0.000"} {
		if strings.Contains(doc, bad) {
			t.Errorf("holds %q", bad)
		}
	}
	if n := strings.Count(doc, "http"); n != 1 {
		t.Errorf("%d addresses, want the name space only", n)
	}
}

func TestViewIsClippedToItsWindow(t *testing.T) {
	n := read(t, write(t, sample(), Options{}))
	r := n.all("clipPath")[0].Nodes[0]
	// window -100..200 x -50..250 at 1:5 from (60, 30): 40..100 x 20..80; y down from 100: 20..80
	got := fmt.Sprint(r.attr("x"), " ", r.attr("y"), " ", r.attr("width"), " ", r.attr("height"))
	if got != "40.000 20.000 60.000 60.000" {
		t.Errorf("opening %s", got)
	}
	for _, g := range n.all("g") {
		if g.attr("class") == "view" {
			if g.attr("clip-path") != "url(#a-301-view1)" || g.attr("data-title") != `AT "B3"` {
				t.Errorf("view %+v", g.Attrs)
			}
			return
		}
	}
	t.Error("no view")
}

func TestLayersAndParts(t *testing.T) {
	n := read(t, write(t, sample(), Options{}))
	type look struct{ layer, stroke, width, dash, fill string }
	found := map[string]look{}
	for _, g := range n.all("g") {
		if l := g.attr("data-layer"); l != "" {
			found[g.attr("class")] = look{l, g.attr("stroke"), g.attr("stroke-width"), g.attr("stroke-dasharray"), g.attr("fill")}
		}
	}
	for class, want := range map[string]look{
		"detl-patt hatch":  {"A-DETL-PATT", "#707070", "0.18", "", ""},
		"detl-patt ground": {"A-DETL-PATT", "", "", "", "#ffffff"},
		"detl-mcut-main":   {"A-DETL-MCUT-MAIN", "#000000", "0.7", "", ""},
		"detl-cntr":        {"A-DETL-CNTR", "#000000", "0.25", "12 2 3 2", ""},
		"anno-titl":        {"A-ANNO-TITL", "", "", "", "#000000"},
	} {
		if found[class] != want {
			t.Errorf("%s: %+v, want %+v", class, found[class], want)
		}
	}
	parts, stops := 0, 0
	for _, g := range n.all("g") {
		if g.attr("data-mark") == "B3" {
			parts++
			if g.attr("tabindex") == "0" && g.attr("aria-label") == `B3, LUMBER, 5 1/2" x 9 1/4"` {
				stops++
			}
			if g.attr("data-role") != "block" || g.Nodes[0].Text != `B3, LUMBER, 5 1/2" x 9 1/4"` {
				t.Errorf("part %+v", g)
			}
		}
	}
	if parts != 2 {
		t.Errorf("part B3 is told %d times, want hatch and outline", parts)
	}
	if stops != 1 {
		t.Errorf("the keyboard stops %d times at part B3", stops)
	}
}

// The lines of a pattern have dashes of their own, not those of the pen.
func TestHatchOnDashedPen(t *testing.T) {
	diag := &render.HatchPattern{Lines: []render.PatternLine{{Angle: 45, Spacing: 3}}}
	doc := write(t, page(render.Fill{Pen: render.Hidden, Region: geom.Rect(0, 0, 50, 50), Pattern: diag}), Options{})
	if !strings.Contains(doc, `class="detl-hidd hatch"`) || strings.Contains(doc, "dasharray") {
		t.Errorf("dashed hatch in\n%s", doc)
	}
}

func TestSpacesAreKept(t *testing.T) {
	text := render.Text{Pen: render.Note, At: v(10, 50), Height: 2.5, Align: render.TopLeft, Lines: []string{"TWO  SPACES"}}
	g := read(t, write(t, page(text), Options{})).all("g")[0]
	if g.attr("space") != "preserve" || g.all("text")[0].Text != "TWO  SPACES" {
		t.Errorf("%+v", g)
	}
}

// Strokes of one pen become one path; another part, another pen and a long path do not join.
func TestMerging(t *testing.T) {
	a, b := &render.Tag{Mark: "B1"}, &render.Tag{Mark: "B2"}
	at := func(pen render.Pen, i int, tag *render.Tag) render.Item {
		return render.Stroke{Pen: pen, Path: geom.Polyline(v(float64(i), 10), v(float64(i), 20)), Tag: tag}
	}
	same := render.Tag{Mark: "B1"}
	s := page(at(render.Fine, 1, nil), at(render.Fine, 2, nil), at(render.Fine, 3, a), at(render.Fine, 4, &same), at(render.Fine, 5, b), at(render.Cut, 6, b))
	var got []string
	for _, p := range read(t, write(t, s, Options{})).all("path") {
		got = append(got, p.attr("d"))
	}
	want := "M1 90 1 80M2 90 2 80 | M3 90 3 80M4 90 4 80 | M5 90 5 80 | M6 90 6 80"
	if all := strings.Join(got, " | "); all != want {
		t.Errorf("paths %s\nwant  %s", all, want)
	}
	long := page()
	for i := range 1000 {
		long.Items = append(long.Items, at(render.Fine, i%200, nil))
	}
	for _, p := range read(t, write(t, long, Options{})).all("path") {
		if n := len(p.attr("d")); n > pathLen+100 {
			t.Errorf("path data of %d bytes", n)
		}
	}
}

// The box of each printed line, from its attributes alone, against the attachment point.
func TestAnchors(t *testing.T) {
	const h = 2.5
	at := v(100, 40) // 60 mm from the top
	for a := render.TopLeft; a <= render.BottomRight; a++ {
		for _, rot := range []float64{0, 90} {
			s := page(render.Text{Pen: render.Note, At: at, Height: h, Align: a, Rot: rot, Lines: []string{"FIRST LINE", "2ND"}})
			box := geom.EmptyBox()
			for _, n := range read(t, write(t, s, Options{})).all("text") {
				box = box.Union(textBox(t, n, h, rot))
			}
			col, row := float64((a-1)%3)/2, float64((a-1)/3)/2
			lo, hi := box.Min, box.Max
			want := v(lo.X+col*(hi.X-lo.X), hi.Y-row*(hi.Y-lo.Y)) // y up
			if rot == 90 {                                        // the text's right is up, its top is left
				want = v(lo.X+row*(hi.X-lo.X), lo.Y+col*(hi.Y-lo.Y))
			}
			if want.Dist(at) > 0.002 {
				t.Errorf("align %d, %v degrees: anchored at %v in %v", a, rot, want, box)
			}
			wide, high := font.Width("FIRST LINE", h, false), h*(1+render.LinePitch)
			if rot == 90 {
				wide, high = high, wide
			}
			if math.Abs(box.W()-wide) > 0.003 || math.Abs(box.H()-high) > 0.003 {
				t.Errorf("align %d: %v x %v mm, want %v x %v", a, box.W(), box.H(), wide, high)
			}
		}
	}
}

// textBox returns the box of a text element in paper millimetres, y up.
func textBox(t *testing.T, n node, h, rot float64) geom.Box {
	t.Helper()
	var x, y float64
	if _, err := fmt.Sscan(n.attr("x")+" "+n.attr("y"), &x, &y); err != nil {
		t.Fatal(err)
	}
	turn := n.attr("transform")
	if want := fmt.Sprintf("rotate(-90 %g %g)", x, y); rot == 90 && turn != want || rot == 0 && turn != "" {
		t.Errorf("transform %q, want %q", turn, want)
	}
	w := font.Width(n.Text, h, false)
	start := map[string]float64{"": 0, "middle": -w / 2, "end": -w}[n.attr("text-anchor")]
	u := geom.Polar(geom.Vec{}, 1, rot*math.Pi/180)
	o := v(x, 100-y)
	p := func(a, b float64) geom.Vec { return o.Add(u.Mul(a)).Add(u.Perp().Mul(b)) }
	return geom.BoxOf(p(start, 0), p(start+w, h))
}

func TestTextSizeAndLength(t *testing.T) {
	text := func(s string, bold bool) render.Item {
		return render.Text{Pen: render.Note, At: v(10, 50), Height: 2.5, Align: render.TopLeft, Lines: []string{s}, Bold: bold}
	}
	tests := []struct {
		name, s string
		bold    bool
		length  string
	}{
		// H 1479 I 569 (bold 569) units of 2048, at an em of 2.5 x 2048 / 1409
		{"four letters", "HIHI", false, "7.268"}, // 4096 x 2.5 / 1409 = 7.2676
		{"bold", "HIHI", true, "7.268"},
		{"too short to matter", "HIH", false, ""},
		{"foreign letters", "HIHI \u4e2d", false, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			n := read(t, write(t, page(text(tt.s, tt.bold)), Options{}))
			if got := n.all("text")[0].attr("textLength"); got != tt.length {
				t.Errorf("length %q, want %q", got, tt.length)
			}
			for _, g := range n.all("g") {
				if g.attr("data-layer") == "" {
					continue
				}
				if g.attr("font-size") != "3.634" { // 2.5 x 2048 / 1409
					t.Errorf("size %q", g.attr("font-size"))
				}
				if bold := g.attr("font-weight") == "bold"; bold != tt.bold {
					t.Errorf("bold %v", bold)
				}
			}
		})
	}
}
