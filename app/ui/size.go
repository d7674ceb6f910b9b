package ui

// chartText is the size of the texts of the panels' charts, in CSS pixels.
const chartText = 12.0
