@NullMarked
package org.scrubline.training.web;

import org.jspecify.annotations.NullMarked;
