/** First start, invitations and the administrator's page of people and places. */
@NullMarked
package org.scrubline.people.web;

import org.jspecify.annotations.NullMarked;
