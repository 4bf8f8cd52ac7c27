@NullMarked
package org.scrubline.demo;

import org.jspecify.annotations.NullMarked;
