//! The trade files that come with the program.

/// Name and text of every file of `params/trade`, in the order they are read.
pub const TRADE_FILES: [(&str, &str); 6] = [
    (
        "params/trade/steel.yaml",
        include_str!("../../params/trade/steel.yaml"),
    ),
    (
        "params/trade/lumber-and-sheets.yaml",
        include_str!("../../params/trade/lumber-and-sheets.yaml"),
    ),
    (
        "params/trade/concrete-and-plaster.yaml",
        include_str!("../../params/trade/concrete-and-plaster.yaml"),
    ),
    (
        "params/trade/tile.yaml",
        include_str!("../../params/trade/tile.yaml"),
    ),
    (
        "params/trade/fasteners-and-small.yaml",
        include_str!("../../params/trade/fasteners-and-small.yaml"),
    ),
    (
        "params/trade/metric.yaml",
        include_str!("../../params/trade/metric.yaml"),
    ),
];
