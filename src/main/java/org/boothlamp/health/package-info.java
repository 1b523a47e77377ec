/** Whether what the sensors say can be believed. */
package org.boothlamp.health;
