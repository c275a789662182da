package check

// brakeRows are asked at both brakes.
var brakeRows = []row{
	{name: "disc", moments: start, needs: discBrake, worst: Stop, source: practice},
	{name: "rim", moments: start, needs: rimBrake, worst: Stop, source: practice},
	{name: "rotor_clean", moments: evening | after | washDay, needs: discBrake, worst: Stop, source: shopPage},
	{name: "rotor_whole", moments: evening | after | crash | arrival, first: crash, rank: 3, needs: discBrake, worst: Stop, source: tradePage},
	{name: "rotor_thickness", moments: evening, first: evening, rank: 3, needs: discBrake, worst: Stop, source: tradePage, measure: RotorThickness},
	{name: "rotor_true", moments: evening | crash | arrival, needs: discBrake, worst: Care, source: memory, measure: RotorRunOut},
	{name: "rotor_six", moments: evening | crash | arrival, first: arrival, rank: 2, needs: discBrake | sixBolt, worst: Stop, source: torqueTable},
	{name: "rotor_ring", moments: evening | crash | arrival, first: arrival, rank: 2, needs: discBrake | lockring, worst: Stop, source: torqueTable},
	{name: "pads", moments: evening | after | crash, first: evening, rank: 2, needs: discBrake, worst: Stop, source: tradePage, measure: Pads},
	{name: "bedding", moments: evening, needs: discBrake | fresh, worst: Care, source: shopPage},
	{name: "calliper", moments: evening | crash | arrival, first: crash | arrival, rank: 3, needs: discBrake, worst: Stop, source: torqueTable},
	{name: "spacer", moments: arrival, first: evening | arrival, rank: 2, needs: discBrake, worst: Stop, source: practice},
	{name: "wall", moments: evening | washDay, needs: rimBrake, worst: Stop, source: tradePage, measure: Wall},
	{name: "surface", moments: evening | after | washDay | crash | arrival, first: evening | crash | arrival, rank: 3, needs: rimBrake, worst: Stop, source: practice},
	{name: "rim_pads", moments: evening | after | crash | arrival, first: evening | crash | arrival, rank: 2, needs: rimBrake, worst: Stop, source: practice},
}
