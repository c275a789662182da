console.log('cleared');
