package render

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"standclear/geom"
)

const (
	tickWeight = 50      // line weight of dimension ticks, 1/100 mm: twice the line. Common practice, no source
	maxHatch   = 100_000 // strokes past which a pattern is a mistake. A judgement: lines at 1 mm over ARCH E are some 2000
	maxNest    = 8       // symbols inside symbols. A judgement
)

// Flatten draws the sheet out: the views in order, each with its items in order, then the sheet's
// own items over them. Dimensions, leaders, symbols and hatches come out as lines, areas and words;
// pens that are not plotted, and what lies wholly outside an opening, are left out. Words are kept
// wherever they lie.
//
// It is an error for a number to be NaN or infinite, for a size, a scale or a window with items to
// be empty, for a pen, alignment or item to be unknown, and for a symbol to hold itself.
func (s *Sheet) Flatten() ([]Frame, error) {
	paper := geom.Box{Max: geom.Vec{X: s.Size.W, Y: s.Size.H}}
	if !finite(paper.Max) || s.Size.W <= 0 || s.Size.H <= 0 {
		return nil, fmt.Errorf("sheet %q: size %g x %g mm", s.ID, s.Size.W, s.Size.H)
	}
	var frames []Frame
	for i := range s.Views {
		v := &s.Views[i]
		if len(v.Items) == 0 {
			continue
		}
		f, err := s.view(v)
		if err != nil {
			return nil, fmt.Errorf("sheet %q, view %q: %w", s.ID, v.ID, err)
		}
		frames = append(frames, f)
	}
	p := s.plotter(paper)
	if err := p.items(s.Items, space{geom.Identity(), 1, 1}, nil); err != nil {
		return nil, fmt.Errorf("sheet %q: %w", s.ID, err)
	}
	return append(frames, Frame{Box: paper, Ink: p.ink}), nil
}

func (s *Sheet) view(v *View) (Frame, error) {
	k := 1 / v.Scale.K
	if !finite(v.At, v.Window.Min, v.Window.Max, geom.Vec{X: k}) || k <= 0 {
		return Frame{}, fmt.Errorf("scale %g, placed at %v, window %v", v.Scale.K, v.At, v.Window)
	}
	if v.Window.W() == 0 || v.Window.H() == 0 {
		return Frame{}, errors.New("the window shows nothing")
	}
	sp := space{geom.Scale(k).Then(geom.Translate(v.At)), k, 1}
	p := s.plotter(geom.Box{Min: sp.Apply(v.Window.Min), Max: sp.Apply(v.Window.Max)})
	err := p.items(v.Items, sp, nil)
	return Frame{View: v, Box: p.box, Ink: p.ink}, err
}

// space relates the coordinates of items to paper.
type space struct {
	geom.Xform         // to paper millimetres
	k          float64 // paper mm per space mm
	plot       float64 // paper mm per plotted mm: 1, or in a symbol the scale of the symbol
}

// plotter collects the ink of one frame.
type plotter struct {
	style  DimStyle
	number func(float64) string
	box    geom.Box
	ink    []Ink
	nest   int
	reach  map[[4]int]float64 // dimension lines drawn so far: start and direction to length
}

func (s *Sheet) plotter(box geom.Box) *plotter {
	p := &plotter{style: s.Unit.Style(), number: s.Number, box: box}
	if p.number == nil {
		p.number = func(mm float64) string { return trimFloat(math.Round(mm*1e3) / 1e3) }
	}
	return p
}

// items draws the items of a space; in is the symbol they stand in, or nil.
func (p *plotter) items(items []Item, sp space, in *Insert) error {
	for i, it := range items {
		if err := p.item(it, sp, in); err != nil {
			return fmt.Errorf("item %d (%T): %w", i, it, err)
		}
	}
	return nil
}

func (p *plotter) item(it Item, sp space, in *Insert) error {
	switch it := it.(type) {
	case Stroke:
		return p.line(Line{Pen: it.Pen, Path: it.Path.Transform(sp.Xform), Tag: tagOf(it.Tag, in)})
	case Fill:
		return p.fill(it, sp, tagOf(it.Tag, in))
	case Text:
		return p.text(it, sp, in)
	case Dim:
		return p.dim(it, sp)
	case Leader:
		return p.leader(it, sp)
	case Insert:
		it.Tag = tagOf(it.Tag, in)
		return p.insert(it, sp)
	}
	return errors.New("unknown kind of item")
}

// tagOf returns a part's own tag, or that of the symbol it stands in.
func tagOf(own *Tag, in *Insert) *Tag {
	if own == nil && in != nil {
		return in.Tag
	}
	return own
}

// line adds a stroke already in paper millimetres; weight 0 is that of the pen.
func (p *plotter) line(l Line) error {
	if err := checkInk(l.Pen, l.Path); err != nil {
		return err
	}
	if l.Weight == 0 {
		l.Weight = l.Pen.Def().Weight
	}
	if !l.Pen.Def().NoPlot && l.Path.Length() > geom.Tol && p.shows(l.Path.Bounds()) {
		p.ink = append(p.ink, l)
	}
	return nil
}

// area adds a fill already in paper millimetres.
func (p *plotter) area(a Area) error {
	if err := checkInk(a.Pen, a.Region...); err != nil {
		return err
	}
	if !a.Pen.Def().NoPlot && len(a.Region) > 0 && p.shows(a.Region.Bounds()) {
		p.ink = append(p.ink, a)
	}
	return nil
}

// words adds a line of lettering already in paper millimetres.
func (p *plotter) words(w Words) error {
	if err := checkInk(w.Pen); err != nil {
		return err
	}
	if !finite(w.At, geom.Vec{X: w.Height, Y: w.Rot}) {
		return errNotFinite
	}
	if w.Height <= 0 {
		return fmt.Errorf("text height %g mm", w.Height)
	}
	w.Text = Clean(w.Text)
	if !w.Pen.Def().NoPlot && strings.TrimSpace(w.Text) != "" {
		p.ink = append(p.ink, w)
	}
	return nil
}

func (p *plotter) shows(b geom.Box) bool {
	return b.Max.X >= p.box.Min.X && b.Min.X <= p.box.Max.X && b.Max.Y >= p.box.Min.Y && b.Min.Y <= p.box.Max.Y
}

// text sets a block of lines about its attachment point:
//
//	TopLeft +--  LINE ONE    cap line
//	             LINE TWO
//	             LINE SIX --+ BottomRight    baseline
func (p *plotter) text(t Text, sp space, in *Insert) error {
	if t.Align < TopLeft || t.Align > BottomRight {
		return fmt.Errorf("alignment %d", t.Align)
	}
	if t.Attr != "" && in != nil {
		t = in.Filled(t)
	}
	lines := t.Lines
	h := t.Height * sp.plot
	tall := h * (1 + LinePitch*float64(len(lines)-1)) // first cap line to last baseline
	up := geom.Polar(geom.Vec{}, 1, (t.Rot+90)*math.Pi/180)
	row, col := (t.Align-1)/3, (t.Align-1)%3
	first := tall*float64(row)/2 - h // first baseline over the attachment point
	for i, l := range lines {
		at := sp.Apply(t.At).Add(up.Mul(first - LinePitch*h*float64(i)))
		err := p.words(Words{Pen: t.Pen, At: at, Side: Side(col), Height: h, Rot: t.Rot, Text: l, Bold: t.Bold})
		if err != nil {
			return err
		}
	}
	return nil
}

// Filled returns a field of the symbol with the value it has here, on one line, or with the text that stands in
// the symbol where it has none.
func (in Insert) Filled(t Text) Text {
	for _, f := range slices.Backward(in.Fields) {
		if strings.EqualFold(f.Name, t.Attr) {
			t.Lines = []string{f.Value}
			if f.Height > 0 {
				t.Height = f.Height
			}
			return t
		}
	}
	t.Lines = []string{strings.Join(t.Lines, " ")}
	return t
}

func (p *plotter) fill(f Fill, sp space, tag *Tag) error {
	r := f.Region.Transform(sp.Xform)
	if f.Pattern == nil {
		return p.area(Area{Pen: f.Pen, Region: r, White: f.White, Tag: tag})
	}
	if err := checkInk(f.Pen, r...); err != nil {
		return err
	}
	for _, l := range f.Pattern.Lines {
		if err := p.hatch(f, l, r, sp, tag); err != nil {
			return fmt.Errorf("pattern %q: %w", f.Pattern.Name, err)
		}
	}
	return nil
}

// hatch draws one line family of a pattern in a region already on paper. The family turns with the
// fill, its base point about the origin of the fill.
func (p *plotter) hatch(f Fill, l PatternLine, r geom.Region, sp space, tag *Tag) error {
	turn := f.Turn * math.Pi / 180
	u := geom.Polar(geom.Vec{}, sp.plot, turn)
	base := sp.Apply(f.Origin).Add(u.Mul(l.Base.X)).Add(u.Perp().Mul(l.Base.Y))
	angle, spacing, shift := l.Angle*math.Pi/180+turn, l.Spacing*sp.plot, l.Shift*sp.plot
	period, dashes := 0.0, make([]float64, len(l.Dashes))
	for i, d := range l.Dashes {
		dashes[i] = d * sp.plot
		period += math.Abs(dashes[i])
	}
	b := r.Bounds()
	count := (b.W() + b.H()) / spacing // lines at most, and below their dashes
	if n := float64(len(dashes)); n > 0 {
		count += n * (count + b.W()*b.H()/spacing/period)
	}
	if !finite(base, geom.Vec{X: angle, Y: shift}) || !(spacing > 0) || !(count <= maxHatch) {
		return fmt.Errorf("lines %+v at scale %g would be %g strokes", l, sp.plot, count)
	}
	for _, path := range geom.Hatch(r, angle, spacing, base, dashes, shift) {
		if err := p.line(Line{Pen: f.Pen, Path: path, Hatch: true, Tag: tag}); err != nil {
			return err
		}
	}
	return nil
}

func (p *plotter) dim(d Dim, sp space) error {
	if d.Kind < Linear || d.Kind > OrdinateY {
		return fmt.Errorf("dimension kind %d", d.Kind)
	}
	if !finite(d.P, d.Q, d.Line, d.Centre, geom.Vec{X: d.Angle}) {
		return errNotFinite
	}
	pic := d.Picture(p.style, sp.plot/sp.k, p.number)
	for i, l := range pic.Lines {
		q, ok := p.once(l.Transform(sp.Xform))
		if !ok {
			continue
		}
		use := ExtensionLine
		if i == 0 && d.Kind < OrdinateX {
			use = DimensionLine
		}
		if err := p.line(Line{Pen: d.Pen, Path: q, Use: use}); err != nil {
			return err
		}
	}
	for _, l := range pic.Ticks {
		if err := p.line(Line{Pen: d.Pen, Path: l.Transform(sp.Xform), Weight: tickWeight}); err != nil {
			return err
		}
	}
	return p.text(Text{Pen: d.Pen, At: pic.TextAt, Height: p.style.Text, Align: MiddleCentre, Rot: pic.Rot,
		Lines: []string{pic.Label}}, sp, nil)
}

// once returns what of a dimension's line is not drawn yet: neighbours in a chain share extension
// lines, and two lines over each other print darker than one.
func (p *plotter) once(l geom.Path) (geom.Path, bool) {
	if len(l.V) != 2 || l.V[0].Bulge != 0 {
		return l, true
	}
	a, b := l.V[0].Vec, l.V[1].Vec
	u := b.Sub(a).Unit()
	milli := func(v float64) int { return int(math.Round(v * 1000)) }
	key := [4]int{milli(a.X), milli(a.Y), milli(u.X), milli(u.Y)}
	if p.reach == nil {
		p.reach = map[[4]int]float64{}
	}
	done, length := p.reach[key], a.Dist(b)
	if length <= done+geom.Tol {
		return l, false
	}
	p.reach[key] = length
	return geom.Polyline(a.Add(u.Mul(done)), b), true
}

func (p *plotter) leader(l Leader, sp space) error {
	if len(l.Points) < 2 {
		return errors.New("a leader needs two points")
	}
	line, tip := l.Picture(p.style, sp.plot/sp.k)
	if err := p.line(Line{Pen: l.Pen, Path: line.Transform(sp.Xform), Use: LeaderLine}); err != nil {
		return err
	}
	return p.area(Area{Pen: l.Pen, Region: tip.Transform(sp.Xform)})
}

// insert draws a symbol: its units become those of the space times the scale, its text heights,
// arrows and hatch spacings grow with it.
func (p *plotter) insert(in Insert, sp space) error {
	scale := in.Scale
	if scale == 0 {
		scale = 1
	}
	if in.Symbol == nil {
		return errors.New("no symbol")
	}
	if !(scale > 0) {
		return fmt.Errorf("symbol %q at scale %g", in.Symbol.Name, in.Scale)
	}
	if p.nest == maxNest {
		return fmt.Errorf("symbol %q stands inside itself, or more than %d deep", in.Symbol.Name, maxNest)
	}
	p.nest++
	defer func() { p.nest-- }()
	own := geom.Scale(scale).Then(geom.Translate(in.At)).Then(sp.Xform)
	return p.items(in.Symbol.Items, space{own, sp.k * scale, sp.k * scale}, &in)
}
