export interface Drawing { readonly placeholder?: never }
