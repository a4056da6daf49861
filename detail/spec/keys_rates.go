package spec

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"standclear/detail/unit"
)

// rateKeys are the section rates: what things cost. No price is built in. A section left out says nothing and is
// no part of the hash.
func rateKeys(p **Rates) key {
	return key{name: "rates", about: "what things cost, for compare; no price is built in", kind: anOption, option: &option{
		open: func() []key { *p = new(Rates); return ratesOf(*p) },
		keys: func() []key {
			if *p == nil {
				return nil
			}
			return ratesOf(*p)
		},
	}}
}

func ratesOf(r *Rates) []key {
	money := func(name string, p **float64, about, sample string) key {
		return value(someMoney, name, maybe[float64]{p}, about).within(0, 1e6).eg(sample, sample)
	}
	hours := func(name string, p **float64, about, sample string) key {
		return value(aFactor, name, maybe[float64]{p}, about).within(0, 1000).eg(sample, sample)
	}
	return []key{
		text("currency", &r.Currency, "word printed behind a sum").orWord("units of money", notSaid),
		money("block", &r.Block, "money for one block beside its wood: screws, membranes, treatment", "20"),
		value(aPrice, "lumber", maybe[float64]{&r.Lumber}, "money for a length of the sticks bought").within(0, 1e4).eg("1.50/ft", "5/m"),
		money("fastener", &r.Fastener, "money for one fastener with its washers and nut", "8"),
		money("hour", &r.Hour, "money for an hour of work", "60"),
		hours("block_hours", &r.BlockHours, "hours of work at one block", "0.75"),
		hours("fastener_hours", &r.FastenerHours, "hours of work at one fastener", "0.1"),
	}
}

const priceForm = "a price of a length is written 1.50/ft or 5/m"

// parsePrice reads money for a length, 1.50/ft or 5/m, as money a metre.
func parsePrice(s string) (float64, error) {
	n, per, ok := strings.Cut(strings.ReplaceAll(s, " ", ""), "/")
	by, known := map[string]float64{"ft": float64(unit.Metre / unit.Foot), "m": 1}[per]
	v, err := parseMoney(n)
	if !ok || !known || err != nil {
		return 0, &unit.SyntaxError{Given: fmt.Sprintf("%q is not a price of a length", cut(s)), Forms: priceForm}
	}
	return v * by, nil
}

func printPrice(v float64, sys unit.System) string {
	if sys == unit.SI {
		return printMoney(v, sys) + "/m"
	}
	return printMoney(v*float64(unit.Foot/unit.Metre), sys) + "/ft"
}

// parseMoney reads an amount without a currency.
func parseMoney(s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || strings.Trim(s, "+-.0123456789") != "" || math.IsInf(v, 0) {
		return 0, &unit.SyntaxError{Given: fmt.Sprintf("%q is not an amount of money", cut(s)), Forms: "an amount is written 8 or 8.50, without its currency"}
	}
	return v, nil
}

// printMoney writes an amount with two decimals, a whole one without.
func printMoney(v float64, _ unit.System) string {
	return strings.TrimSuffix(strconv.FormatFloat(v, 'f', 2, 64), ".00")
}
