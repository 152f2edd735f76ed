/** Public door of the fields of a touchdown. */
export type { ConditionField } from './conditionField.ts';
export {
  CONDITION_FIELDS,
  fieldNamed,
  namesOf,
  rangedField,
  type ConditionName,
  type FieldName,
  type RangedField,
} from './conditionFields.ts';
