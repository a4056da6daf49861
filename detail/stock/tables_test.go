package stock

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"standclear/detail/unit"
)

// rows reads a table of testdata; its source stands in its head.
func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, line := range all[1:] {
		row := map[string]string{}
		for i, key := range all[0] {
			row[key] = line[i]
		}
		out = append(out, row)
	}
	return out
}

func num(t *testing.T, row map[string]string, key string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(row[key], 64)
	if err != nil {
		t.Fatalf("%v: %s: %v", row, key, err)
	}
	return v
}

// Every row of the lumber table.
func TestLumberTable(t *testing.T) {
	all := rows(t, "lumber_values.csv")
	if len(all) != 28 {
		t.Errorf("%d rows", len(all))
	}
	for _, row := range all {
		v, ok := Lumber(row["species"], row["grade"], unit.Length(num(t, row, "depth"))*unit.Inch)
		if !ok {
			t.Errorf("%v is not known", row)
			continue
		}
		for key, got := range map[string]float64{
			"fb_table": v.Fb.PSI(), "fb_cf": v.FbCF().PSI(), "ft": v.Ft.PSI(), "fv": v.Fv.PSI(), "fcperp": v.FcPerp.PSI(), "e": v.E.PSI(), "emin": v.Emin.PSI(), "g": v.G,
		} {
			if want := num(t, row, key); math.Abs(got-want) > 0.001*want {
				t.Errorf("%s %s, %s in deep: %s is %g, want %g", row["species"], row["grade"], row["depth"], key, got, want)
			}
		}
	}
}

// Every cell of the prescriptive table.
func TestPlainLedgerTable(t *testing.T) {
	all := rows(t, "plain_ledger.csv")
	if len(all) != 84 {
		t.Errorf("%d cells", len(all))
	}
	for _, row := range all {
		got := PlainLedger(unit.Pressure(num(t, row, "psf"))*unit.PSF, unit.Length(num(t, row, "span"))*unit.Foot)
		if i := int(num(t, row, "connection")); len(got) != 3 || math.Abs(got[i].Spacing.Inches()-num(t, row, "spacing")) > 1e-9 {
			t.Errorf("%v: %v", row, got)
		}
	}
}
