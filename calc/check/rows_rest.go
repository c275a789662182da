package check

var barRows = []row{
	{name: "levers", moments: start | evening | after | crash | arrival, first: evening | crash | arrival, rank: 1, worst: Stop, source: practice},
	{name: "headset", moments: start | evening | crash | arrival, first: evening | crash | arrival, rank: 1, worst: Stop, source: practice},
	{name: "stem_bolts", moments: evening | arrival, first: evening | arrival, rank: 1, worst: Stop, source: torqueTable},
	{name: "grips", moments: evening | crash | arrival, first: crash, rank: 3, worst: Care, source: torqueTable},
	{name: "carbon_bar", moments: crash | arrival, first: evening | crash | arrival, rank: 1, needs: carbonBar, worst: Stop, source: manual},
	{name: "sweat_clamps", moments: evening | after, needs: sweaty, worst: Stop, source: practice},
	{name: "clamps", moments: washDay, worst: Stop, source: practice},
}

var frameRows = []row{
	{name: "frame", moments: start | evening | after | washDay | crash | arrival, first: evening | crash | arrival, rank: 1, worst: Stop, source: practice},
	{name: "cage", moments: start | crash | arrival, first: evening | crash | arrival, rank: 1, needs: shaken, worst: Stop, source: practice},
	{name: "carbon_frame", moments: crash | arrival, first: evening | crash | arrival, rank: 1, needs: carbonFrame, worst: Stop, source: manual},
	{name: "post", moments: crash | arrival, first: crash | arrival, rank: 2, worst: Stop, source: torqueTable},
	{name: "pedals", moments: evening | crash | arrival, first: crash | arrival, rank: 3, worst: Stop, source: torqueTable},
	{name: "crank", moments: evening | crash | arrival, worst: Stop, source: torqueTable},
	{name: "chain", moments: evening, worst: Stop, source: practice},
	{name: "shifting", moments: evening, worst: Stop, source: practice},
}
