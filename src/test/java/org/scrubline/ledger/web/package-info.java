/** The director's page about the evidence. */
@NullMarked
package org.scrubline.ledger.web;

import org.jspecify.annotations.NullMarked;
