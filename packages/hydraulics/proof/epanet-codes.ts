/** The toolkit's own numbers for the things it is told, as its documentation lists them. */
export const FlowUnits = { GPM: 1 } as const;
export const HeadLossType = { HW: 0 } as const;
export const NodeType = { Junction: 0, Reservoir: 1 } as const;
export const LinkType = { CVPipe: 0, Pipe: 1, Pump: 2, PRV: 3 } as const;
export const NodeProperty = { Elevation: 0, Emitter: 3, Demand: 9, Head: 10 } as const;
export const LinkProperty = { Diameter: 0, InitSetting: 5, Flow: 8 } as const;
export const Option = { Trials: 0, Accuracy: 1, Emitexpon: 3 } as const;
export const InitHydOption = { NoSave: 0, InitFlow: 10 } as const;
