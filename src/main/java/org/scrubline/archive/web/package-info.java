@NullMarked
package org.scrubline.archive.web;

import org.jspecify.annotations.NullMarked;
