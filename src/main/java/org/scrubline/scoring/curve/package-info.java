/**
 * The competency model: one dynamic many-facet ordinal model that separates a trainee's level from step difficulty,
 * case complexity and scorer habit. {@link org.scrubline.scoring.curve.CompetencyModel} fits a programme and smooths
 * one trainee; {@code docs/model.md} explains every choice in the trade's language.
 */
@NullMarked
package org.scrubline.scoring.curve;

import org.jspecify.annotations.NullMarked;
