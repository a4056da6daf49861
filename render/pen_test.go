package render

import (
	"fmt"
	"math"
	"testing"
)

// lightness is L* of CIELAB for an sRGB colour (CIE 15 and IEC 61966-2-1, from memory, confirm).
func lightness(t *testing.T, rgb string) float64 {
	t.Helper()
	var c [3]int
	if _, err := fmt.Sscanf(rgb, "#%02x%02x%02x", &c[0], &c[1], &c[2]); err != nil {
		t.Fatalf("colour %q: %v", rgb, err)
	}
	y := 0.0
	for i, part := range []float64{0.2126, 0.7152, 0.0722} {
		v := float64(c[i]) / 255
		if v <= 0.04045 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		y += part * v
	}
	return 116*math.Cbrt(y) - 16
}

// Mid grey #777777 has L* 50.0, white 100: the yardstick itself.
func TestLightness(t *testing.T) {
	for rgb, want := range map[string]float64{"#777777": 50.0, "#ffffff": 100} {
		if got := lightness(t, rgb); math.Abs(got-want) > 0.1 {
			t.Errorf("%s: L* %.2f, want %.1f", rgb, got, want)
		}
	}
}

// A grey print of the bands keeps their order, and black letters stand out on the darkest: lightness
// rises by the same step, give or take a fifth, from no less than 50.
func TestBandsReadInGrey(t *testing.T) {
	first := lightness(t, Heat1.Def().RGB)
	step := (lightness(t, Heat8.Def().RGB) - first) / float64(Heat8-Heat1)
	if first < 50 || step < 5 {
		t.Errorf("the bands start at L* %.1f and rise by %.1f", first, step)
	}
	for p := Heat2; p <= Heat8; p++ {
		rise := lightness(t, p.Def().RGB) - lightness(t, (p-1).Def().RGB)
		if math.Abs(rise-step) > step/5 {
			t.Errorf("band %d is lighter than the one before by %.1f, want %.1f", p-Heat1+1, rise, step)
		}
		if p.Def().Index == (p - 1).Def().Index {
			t.Errorf("bands %d and %d share a colour index", p-Heat1, p-Heat1+1)
		}
	}
}
