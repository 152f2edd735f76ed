#!/usr/bin/env node
console.log('hi', process.version);
