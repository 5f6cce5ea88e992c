/**
 * In-plane conductivity of plain-weave carbon and epoxy, 2 mm, S/m: least and most of a measured table (Functional Composite
 * Materials (2023), article s42252-023-00041-3, Table 1; through the thickness it is 10.5 to 23.0).
 */
export const wovenConductivitySPerM = [5488, 8012] as const;
