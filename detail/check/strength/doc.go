// Package strength decides whether a ledger standing off a wall on short blocks carries its deck.
//
// It follows the load from the joist hangers through the ledger, the fasteners, the eccentric block
// and the rim into the floor, in allowable stress design, and writes every number down as a
// check.Step with its formula and clause:
//
//	  inside                                        outside
//	======= floor joist
//	tie  |rim|sheathing|  block, ply by ply  |ledger|
//	-----| T <---------------------------------     |=== hanger seat
//	     |   |         |                     |      |==|=== joist
//	     | C --->      |                     |      |  v  R at half the seat
//	     |   |         |                     |      |
//	     plate                e = rim face to load line
//
// Where the fasteners pass parts of the block that hang on nothing else, every shear plane is checked as two
// members, and the whole fastener by limit analysis of all it passes (Dowel.Transfer), with the loose parts as
// voids and, where the wood at their faces is shown to hold their couple, with them. The state of the dowel
// that counts says what rim, backing and screws between the plies bear.
//
// Formulas are written in inches, pounds and pounds per square inch, the units of the standard they
// come from (ANSI/AWC NDS-2018 and its Technical Report 12, ASCE 7-16, IRC 2021); quantities at the
// borders of the package are typed. Figures marked "from memory, confirm" were written down without
// the page open.
//
//	report, results := strength.Run(model)
//	fmt.Println(report.Worst(), results.Tension.Pounds())
package strength
