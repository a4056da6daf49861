package sheet

import (
	"fmt"
	"math"

	"standclear/detail/check/moisture"
	"standclear/detail/check/thermal"
	"standclear/detail/unit"
	"standclear/render"
)

// heatScale turns temperature factors into what is printed: degrees of the project's system where both
// design temperatures are stated, else the factor itself.
type heatScale struct {
	sys     unit.System
	in, out unit.Temp
	stated  bool
}

func (w *writer) heatScale() heatScale {
	s := w.a.Spec.Site
	h := heatScale{sys: w.a.Spec.Project.System}
	if s.Inside != nil && s.Outside != nil && *s.Inside > *s.Outside {
		h.in, h.out, h.stated = *s.Inside, *s.Outside, true
	}
	return h
}

// value returns what is printed for a factor.
func (h heatScale) value(f float64) float64 {
	if !h.stated {
		return f
	}
	return h.degrees(h.out + unit.Temp(f)*(h.in-h.out))
}

// factor is the other way round.
func (h heatScale) factor(v float64) float64 {
	return (v - h.value(0)) / (h.value(1) - h.value(0))
}

func (h heatScale) degrees(t unit.Temp) float64 {
	if h.sys == unit.IP {
		return t.Fahrenheit()
	}
	return float64(t)
}

// unit is the sign after a value, with the blank before it.
func (h heatScale) unit() string {
	switch {
	case !h.stated:
		return ""
	case h.sys == unit.IP:
		return " F"
	}
	return " C"
}

// mostBands is how many bands of temperature have a ground of their own.
const mostBands = int(render.Heat8-render.Heat1) + 1

// step returns the distance of the isotherms: the least round one that needs no more bands than there are.
func (h heatScale) step() float64 {
	steps := []float64{1, 2, 5, 10, 20, 50}
	switch {
	case !h.stated:
		steps = []float64{0.2}
	case h.sys == unit.IP:
		steps = []float64{2, 5, 10, 20, 50, 100}
	}
	for _, s := range steps {
		if len(h.between(s)) < mostBands {
			return s
		}
	}
	return steps[len(steps)-1]
}

// levels returns the values the isotherms stand for.
func (h heatScale) levels() []float64 { return h.between(h.step()) }

// between returns the multiples of a step between outside and inside. One that lies almost at either end
// would run along the surfaces and tell nothing.
func (h heatScale) between(step float64) []float64 {
	const near = 0.15
	var out []float64
	for n := math.Ceil(h.value(0)/step + near); n <= h.value(1)/step-near; n++ {
		out = append(out, n*step)
	}
	return out
}

// ground is the pen of band k of n: the coldest and warmest of any set look alike.
func ground(k, n int) render.Pen {
	if n < 2 {
		return render.Heat8
	}
	return render.Heat1 + render.Pen(math.Round(float64(k)*float64(mostBands-1)/float64(n-1)))
}

// text writes a level or a limit: whole degrees, or the factor to the tenth.
func (h heatScale) text(v float64) string {
	if !h.stated {
		return fmt.Sprintf("%.1f", v)
	}
	return fmt.Sprintf("%.0f", math.Round(v)+0)
}

// tenths writes a value to the tenth of a degree, or the hundredth of the factor.
func (h heatScale) tenths(v float64) string {
	if !h.stated {
		return fmt.Sprintf("%.2f", v)
	}
	return fmt.Sprintf("%.1f", math.Round(v*10)/10+0)
}

// roomDew returns the dew point of the room air; ok when temperature and humidity are stated.
func (w *writer) roomDew() (dew unit.Temp, ok bool) {
	s := w.a.Spec.Site
	if s.Inside == nil || s.Humidity == nil {
		return 0, false
	}
	return moisture.DewPoint(*s.Inside, *s.Humidity), true
}

// plusMinus writes a value and its error to so many decimals, the error rounded up; an error that could
// not be told is a question mark.
func plusMinus(v thermal.Value, decimals int) string {
	k := math.Pow(10, float64(decimals))
	figure := fmt.Sprintf("%.*f", decimals, math.Round(v.V*k)/k+0)
	switch {
	case v.Err == 0:
		return figure
	case v.Err < 0 || math.IsInf(v.Err, 0) || math.IsNaN(v.Err):
		return figure + " ±?"
	}
	return fmt.Sprintf("%s ±%.*f", figure, decimals, math.Ceil(v.Err*k-1e-9)/k)
}

// decimals returns how many show a value to three figures.
func decimals(v float64) int {
	if v == 0 {
		return 1
	}
	return min(max(2-int(math.Floor(math.Log10(math.Abs(v)))), 0), 4)
}
