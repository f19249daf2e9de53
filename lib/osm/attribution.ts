/** Asked for by the licence wherever the data or what is made of it goes (ODbL 1.0, section 4.3). */
export const OSM_ATTRIBUTION = '© OpenStreetMap contributors, ODbL 1.0'
