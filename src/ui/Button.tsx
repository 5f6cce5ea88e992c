import type { ComponentProps } from 'react';

export interface ButtonProps extends Omit<ComponentProps<'button'>, 'type'> {
  /** `main` is the one thing the page is about; `danger` takes something away. */
  readonly kind?: 'plain' | 'main' | 'danger';
}

/** A button of glove size; never submits a form by accident. */
export function Button({ kind = 'plain', className = '', ...rest }: ButtonProps) {
  const kindClass = kind === 'plain' ? '' : `button-${kind}`;
  return <button type="button" className={`button ${kindClass} ${className}`} {...rest} />;
}
