/** Where a photo's bytes lie in the file store: the original under its own key, the smaller pictures beside it. */
export const originalKey = (companyId: string, projectId: string, uniqueId: string): string =>
  `photos/${companyId}/${projectId}/${uniqueId}`;
export const viewKey = (fileKey: string): string => `${fileKey}.view.jpg`;
export const thumbKey = (fileKey: string): string => `${fileKey}.thumb.jpg`;
