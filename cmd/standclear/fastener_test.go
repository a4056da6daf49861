package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// table reads a csv of the strength package's published values with its header as keys.
func table(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../detail/check/strength/testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil || len(all) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(all), err)
	}
	var out []map[string]string
	for _, line := range all[1:] {
		row := map[string]string{}
		for i, v := range line {
			row[all[0][i]] = v
		}
		out = append(out, row)
	}
	return out
}

// ask runs the fastener command and returns its JSON.
func ask(t *testing.T, args ...string) map[string]any {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run(append([]string{"fastener", "--json"}, args...), env{strings.NewReader(""), &out, &errs}); code != exitOK {
		t.Fatalf("%v: exit %d: %s", args, code, errs.String())
	}
	var v map[string]any
	if err := json.Unmarshal(out.Bytes(), &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// The published lag and bolt values (NDS 2018 tables 12A, 12J; TR12-2015 example 3.1; the sources stand in
// the file) come out of the command as the tables print them, the values worked elsewhere to a tenth.
func TestFastenerGivesThePublishedValues(t *testing.T) {
	n := 0
	for _, row := range table(t, "dowel_values.csv") {
		if row["g_side"] == "concrete" || row["g_main"] == "concrete" {
			continue
		}
		v := ask(t, "--kind", row["kind"], "--diameter", row["d"]+"in", "--side-bearing", row["l_side"]+"in", "--side-gravity", row["g_side"], "--side-angle", row["angle_side"],
			"--main-bearing", row["l_main"]+"in", "--main-gravity", row["g_main"], "--main-angle", row["angle_main"], "--gap", row["gap"]+"in")
		z := v["reference_lateral_lb"].(float64)
		if want, err := strconv.ParseFloat(row["computed"], 64); err != nil || math.Abs(z-want) > 0.06 || v["governing_mode"] != row["mode"] {
			t.Errorf("%v: %g lb in mode %v", row, z, v["governing_mode"])
		}
		if modes := v["modes"].(map[string]any); len(modes) != 6 || modes[row["mode"]] != z {
			t.Errorf("%v: modes %v", row, modes)
		}
		if newtons := v["reference_lateral_n"].(float64); math.Abs(newtons-z*4.4482216) > 1e-3 {
			t.Errorf("%v: %g N", row, newtons)
		}
		if row["rule"] == "cell" {
			n++
			if want, _ := strconv.ParseFloat(row["published"], 64); math.Abs(z-want) > 5.1 {
				t.Errorf("%v: %g lb, published %g", row, z, want)
			}
		}
	}
	if n < 60 {
		t.Errorf("%d published cells compared", n)
	}
}

// NDS 2018 table 12.2A. 1 lb/in is 0.175127 N/mm.
func TestFastenerWithdrawal(t *testing.T) {
	for _, row := range table(t, "lag_withdrawal.csv") {
		v := ask(t, "--kind", "lag", "--diameter", row["d"]+"in", "--withdrawal", "--gravity", row["g"])
		w := v["reference_withdrawal_lb_per_in"].(float64)
		if want, _ := strconv.ParseFloat(row["published"], 64); math.Abs(w-want) > 1 {
			t.Errorf("%v: %g lb/in", row, w)
		}
		if mm := v["reference_withdrawal_n_per_mm"].(float64); math.Abs(mm-w*0.175127) > 1e-3 {
			t.Errorf("%v: %g N/mm", row, mm)
		}
	}
}

// By hand: Z of the case below is 171.6 lb (mode II); x 1.15 x 0.7 = 138.1 lb.
func TestFastenerFactors(t *testing.T) {
	v := ask(t, "--kind", "bolt", "--diameter", "1/2in", "--side-bearing", "1.5in", "--side-gravity", "0.55", "--side-angle", "90", "--main-bearing", "1.5in", "--main-gravity", "0.43", "--main-angle", "90",
		"--gap", "0.5in", "--wet", "--duration", "1.15")
	f := v["factors"].(map[string]any)
	if z := v["adjusted_lateral_lb"].(float64); math.Abs(z-138.1) > 0.1 || f["CM"] != 0.7 || f["CD"] != 1.15 || f["Cg"] != 1.0 {
		t.Errorf("%g lb with %v", z, f)
	}
}
