// Package wood holds what the trade knows of solid wood: the species with their strength and shrinkage, the
// moisture content wood comes to in air, and how boards change with it.
//
// Vocabulary. Moisture content, MC, is water by the weight of dry wood, in percent. The equilibrium moisture
// content, EMC, is what wood comes to in air of one temperature and relative humidity. A flat-sawn board
// moves across its width as the tangential coefficient says, a quarter-sawn one as the radial one says.
// Along the grain wood does not move.
//
// Start with [Lookup] for a species, [EMC] for the moisture content of a room and [Change] for how much a
// board grows or shrinks. Strength is in MPa, shrinkage in percent from green to dry, coefficients are per
// percent of moisture content. Figures that no table has are NaN, never zero.
//
// The package knows nothing of panels, joints or gaps.
package wood
