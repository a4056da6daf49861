package dxf

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"standclear/geom"
	"standclear/render"
)

// inspect tells what of the sheet could not be drawn faithfully, before anything is drawn, and
// collects the symbols it uses, inner ones first.
func (d *document) inspect(s *render.Sheet) error {
	if s.Unit != render.Inch && s.Unit != render.Millimetre {
		return fmt.Errorf("unit %d is neither inch nor millimetre", s.Unit)
	}
	if !positive(s.Size.W, s.Size.H) {
		return fmt.Errorf("size %g x %g mm is no sheet", s.Size.W, s.Size.H)
	}
	if err := inspectProps(s.Props); err != nil {
		return err
	}
	for _, v := range drawn(s.Views) {
		if err := d.inspectView(s, v); err != nil {
			return fmt.Errorf("view %q: %w", v.ID, err)
		}
	}
	return each(s.Items, func(it render.Item) error { return d.inspectItem(s, it) })
}

// drawn returns the views that hold anything; the others have no place on the sheet.
func drawn(views []render.View) []render.View {
	return slices.DeleteFunc(slices.Clone(views), func(v render.View) bool { return len(v.Items) == 0 })
}

func inspectProps(props [][2]string) error {
	sum := 0
	for _, p := range props {
		n := len(clean(p[0]))
		if n == 0 || n > maxKey {
			return fmt.Errorf("property %q: its name must have 1 to %d bytes", p[0], maxKey)
		}
		sum += n + len(clean(p[1]))
	}
	if sum > maxRemember {
		return fmt.Errorf("properties of %d bytes; the file remembers %d", sum, maxRemember)
	}
	return nil
}

func (d *document) inspectView(s *render.Sheet, v render.View) error {
	w := v.Window
	switch {
	case !(v.Scale.K >= 1e-3 && v.Scale.K <= 1e6):
		return fmt.Errorf("scale 1:%g is not between 1000:1 and 1:1000000", v.Scale.K)
	case !finite(v.At, v.Place, w.Min, w.Max):
		return errors.New("its place or window is not finite")
	case !positive(w.W()/v.Scale.K, w.H()/v.Scale.K):
		return fmt.Errorf("window %g x %g mm shows nothing", w.W(), w.H())
	}
	return each(v.Items, func(it render.Item) error { return d.inspectItem(s, it) })
}

// each calls fn for every item and names the one that fails.
func each(items []render.Item, fn func(render.Item) error) error {
	for i, it := range items {
		if err := fn(it); err != nil {
			return fmt.Errorf("item %d, %s: %w", i+1, strings.TrimPrefix(fmt.Sprintf("%T", it), "render."), err)
		}
	}
	return nil
}

func (d *document) inspectItem(s *render.Sheet, it render.Item) error {
	switch it := it.(type) {
	case render.Stroke:
		return all(penned(it.Pen), drawable(it.Path))
	case render.Fill:
		return all(penned(it.Pen), inspectFill(it))
	case render.Text:
		return all(penned(it.Pen), inspectText(it))
	case render.Dim:
		return all(penned(it.Pen), inspectDim(it))
	case render.Leader:
		return all(penned(it.Pen), at(it.Points...))
	case render.Insert:
		return all(penned(it.Pen), at(it.At), d.inspectInsert(s, it))
	}
	return errors.New("of a kind that this format does not know")
}

// all returns the first error.
func all(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func penned(p render.Pen) error {
	if p < 0 || int(p) >= len(render.Pens) {
		return fmt.Errorf("pen %d does not exist", p)
	}
	return nil
}

func at(ps ...geom.Vec) error {
	if !finite(ps...) {
		return fmt.Errorf("a point of %v is not finite", ps)
	}
	return nil
}

func drawable(ps ...geom.Path) error {
	for _, p := range ps {
		for _, v := range p.V {
			if !finite(v.Vec) || !usable(v.Bulge) {
				return fmt.Errorf("vertex %v with bulge %g is not finite", v.Vec, v.Bulge)
			}
		}
	}
	return nil
}

func inspectFill(f render.Fill) error {
	if err := all(drawable(f.Region...), at(f.Origin)); err != nil {
		return err
	}
	if !usable(f.Turn) {
		return fmt.Errorf("turn %g is not finite", f.Turn)
	}
	if f.Pattern == nil {
		return nil
	}
	if n := name(f.Pattern.Name); len(f.Pattern.Lines) == 0 || n == "" || strings.EqualFold(n, "SOLID") {
		return fmt.Errorf("hatch pattern %q has no lines or no name of its own", f.Pattern.Name)
	}
	for _, l := range f.Pattern.Lines {
		if math.Abs(l.Spacing) < smallest || !usable(append([]float64{l.Angle, l.Spacing, l.Base.X, l.Base.Y, l.Shift}, l.Dashes...)...) {
			return fmt.Errorf("hatch pattern %q has a line without spacing or a number that is not finite", f.Pattern.Name)
		}
	}
	return nil
}

func inspectText(t render.Text) error {
	switch {
	case !finite(t.At) || !usable(t.Rot):
		return fmt.Errorf("place %v turned %g is not finite", t.At, t.Rot)
	case !positive(t.Height):
		return fmt.Errorf("height %g", t.Height)
	case t.Align < render.TopLeft || t.Align > render.BottomRight:
		return fmt.Errorf("%q has no alignment", strings.Join(t.Lines, " / "))
	}
	return nil
}

func inspectDim(d render.Dim) error {
	if err := at(d.P, d.Q, d.Line, d.Centre); err != nil {
		return err
	}
	switch {
	case d.Kind < render.Linear || d.Kind > render.OrdinateY:
		return fmt.Errorf("kind %d does not exist", d.Kind)
	case !usable(d.Angle):
		return fmt.Errorf("angle %g is not finite", d.Angle)
	case d.TextAt != nil && !finite(*d.TextAt):
		return fmt.Errorf("text at %v is not finite", *d.TextAt)
	case d.Text != "" && strings.Count(d.Text, "<>") != 1:
		return fmt.Errorf("text %q hides the measured value: it needs one <> where the value stands", d.Text)
	}
	return nil
}

// figure is a symbol as the file holds it: one block for all its inserts on the sheets of a discipline.
type figure struct {
	symbol *render.Symbol
	sheet  *render.Sheet // the first that has it
	block  *block
	pen    render.Pen // of its inserts
	mixed  bool       // inserted with different pens
	open   bool       // being looked into
}

// figureKey names a figure: the name of its symbol in lower case, and the discipline, whose layers it may hold.
type figureKey struct{ name, discipline string }

func keyOf(symbol *render.Symbol, s *render.Sheet) figureKey {
	return figureKey{strings.ToLower(name(symbol.Name)), s.Discipline()}
}

func (d *document) inspectInsert(s *render.Sheet, in render.Insert) error {
	if in.Symbol == nil {
		return errors.New("no symbol")
	}
	if in.Scale != 0 && !positive(in.Scale) {
		return fmt.Errorf("symbol %q at scale %g", in.Symbol.Name, in.Scale)
	}
	for _, f := range in.Fields {
		if !hasField(in.Symbol, f.Name) {
			return fmt.Errorf("symbol %q has no field %q", in.Symbol.Name, f.Name)
		}
		if f.Height != 0 && !positive(f.Height) {
			return fmt.Errorf("symbol %q: field %q of height %g", in.Symbol.Name, f.Name, f.Height)
		}
	}
	return d.inspectSymbol(s, in.Symbol, in.Pen)
}

func (d *document) inspectSymbol(sheet *render.Sheet, s *render.Symbol, pen render.Pen) error {
	key := keyOf(s, sheet)
	f := d.figures[key]
	switch {
	case key.name == "":
		return errors.New("symbol without a name")
	case f == nil:
		f = &figure{symbol: s, sheet: sheet, pen: pen, open: true}
		d.figures[key] = f
	case f.open:
		return fmt.Errorf("symbol %q holds itself", s.Name)
	}
	for _, o := range d.inner {
		if o.symbol != s && keyOf(o.symbol, sheet) == key && !reflect.DeepEqual(o.symbol, s) {
			return fmt.Errorf("two symbols have the name %q", s.Name)
		}
	}
	if !f.open {
		f.mixed = f.mixed || f.pen != pen
		return nil
	}
	fields := map[string]bool{}
	err := each(s.Items, func(it render.Item) error {
		if _, ok := it.(render.Dim); ok {
			return errors.New("a dimension would tell another value once the symbol is scaled")
		}
		if t, ok := it.(render.Text); ok && t.Attr != "" {
			k := field(t.Attr)
			if k == "" || fields[k] {
				return fmt.Errorf("field %q has no name or stands twice", t.Attr)
			}
			fields[k] = true
		}
		return d.inspectItem(sheet, it)
	})
	if err != nil {
		return fmt.Errorf("symbol %q: %w", s.Name, err)
	}
	f.open = false
	d.inner = append(d.inner, f)
	return nil
}

// smallest is the size in plotted millimetres under which nothing is drawn on purpose.
const smallest = 0.001

// usable reports whether every number is finite and not absurdly large.
func usable(vs ...float64) bool {
	for _, v := range vs {
		if math.IsNaN(v) || math.Abs(v) > limit {
			return false
		}
	}
	return true
}

func finite(ps ...geom.Vec) bool {
	for _, p := range ps {
		if !usable(p.X, p.Y) {
			return false
		}
	}
	return true
}

// positive reports whether every size can be drawn.
func positive(vs ...float64) bool {
	for _, v := range vs {
		if !(v >= smallest) || v > limit {
			return false
		}
	}
	return true
}
