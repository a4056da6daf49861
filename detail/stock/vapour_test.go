package stock

import "testing"

// Every material a layer may have is listed, but the membrane, whose maker states it, and the ground. Values
// of ISO 10456:2007 table 3, wet cup (from memory, confirm).
func TestVapourFactors(t *testing.T) {
	for _, key := range MaterialKeys() {
		mu, ok := VapourFactor(key)
		if unlisted := key == "membrane" || key == "earth"; ok == unlisted || ok && mu < 1 {
			t.Errorf("%s: %v %v", key, mu, ok)
		}
	}
	for key, want := range map[string]float64{"plywood": 70, "osb": 30, "softwood": 20, "gypsum": 4, "xps": 150, "eps": 60, "batt": 1, "Concrete": 80} {
		if mu, _ := VapourFactor(key); mu != want {
			t.Errorf("%s: %v; want %v", key, mu, want)
		}
	}
}
