/**
 * The rules behind early signals and the fairness page: pure functions over plain records, each with its limit and how
 * often it is raised without cause ({@code docs/model.md}). They read what was signed, and nothing about the people.
 */
@NullMarked
package org.scrubline.cohort.signal;

import org.jspecify.annotations.NullMarked;
