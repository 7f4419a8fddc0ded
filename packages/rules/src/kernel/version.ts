/** Version of the rules: stored with every outcome, raised whenever a verdict could change. */
export const rulesVersion = '1.2.0';
