package spec

import "standclear/detail/unit"

// Assume holds the judgements a calculation rests on: no standard settles any of them. Each is
// printed and can be changed.
type Assume struct {
	// LeverArm is how the couple's lever arm is taken: audited, the lesser of the top row less a third
	// of the foot and 0.75 of the top row, or foot, the first alone. A judgement.
	LeverArm string
	// FootDepth is the foot bearing depth as a share of the block height. A judgement.
	FootDepth unit.Percent
	// Reaction is how a block's share is taken: audited, the greater of the solved value with live load
	// in patterns and 1.25 w s, or solved, the beam alone. A judgement.
	Reaction string
	// NetSection takes the holes out of ledger and rim, with the moment peak at the bolts. A judgement.
	NetSection bool
	// Torsion counts the twist of the ledger by the hangers. A judgement; the NDS has no torsion value.
	Torsion bool
	// Cap is the largest utilisation accepted, 0.1 to 1; under 1 for want of redundancy. A judgement.
	Cap float64
	// MaxGroup is the greatest spread of rows in wet wood. A judgement, after NDS 2018 12.5.1.3.
	MaxGroup unit.Length
	// RowsInTension says which rows take the pull: top, or by stiffness. A judgement.
	RowsInTension string
	// PlyCouple lets a fixed ply supply a couple to the dowel, under conditions. A judgement.
	PlyCouple bool
	// SupportSlip sets one support high by this, as a sensitivity. A judgement.
	SupportSlip unit.Length
}
